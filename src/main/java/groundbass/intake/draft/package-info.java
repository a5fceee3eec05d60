/**
 * Notes and bars as a file has them, made into a line: times on the grid of their bars, places on the neck, nothing that
 * sounds twice on one string. Knows no file format.
 */
package groundbass.intake.draft;
