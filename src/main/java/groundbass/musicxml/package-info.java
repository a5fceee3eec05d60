/**
 * A line as a MusicXML 4.0 file: notation and tablature as two staves of one part. Knows the format and which of its
 * elements says what; decides nothing about how a line is written down.
 */
package groundbass.musicxml;
