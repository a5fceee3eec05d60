/**
 * A performance and its band as a Standard MIDI File. Knows the file format and General MIDI; decides nothing about when
 * or how loud a note is.
 */
package groundbass.midi;
