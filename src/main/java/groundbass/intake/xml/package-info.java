/**
 * MusicXML files, plain and compressed, read as drafts of lines. Reads no other file that they name, and no more of them
 * than its limits.
 */
package groundbass.intake.xml;
