/**
 * A bass line as a value: exact time, places on the neck, both hands' techniques. Immutable records that check
 * themselves; knows nothing of text, print or sound.
 */
package groundbass.score;
