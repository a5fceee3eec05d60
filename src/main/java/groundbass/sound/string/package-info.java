/**
 * The bass: a string that is struck, stopped and touched, and the hands that do it. Knows nothing of other
 * instruments or of the mix.
 */
package groundbass.sound.string;
