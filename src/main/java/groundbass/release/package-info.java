/**
 * From a revision to its release: every file that students take, built once and frozen. Knows nothing of who takes
 * them or when they go live.
 */
package groundbass.release;
