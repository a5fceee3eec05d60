/**
 * A line as it sounds: repeats unrolled, swing played, every note with its moment, loudness and attack. Knows nothing of
 * instruments, files or samples, so that everything that makes sound agrees.
 */
package groundbass.performance;
