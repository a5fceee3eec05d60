/** What a person must be told of a file that was brought in, gathered by bar. Knows no file format. */
package groundbass.intake.notice;
