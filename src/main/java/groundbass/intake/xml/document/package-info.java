/**
 * A MusicXML file as a document: unpacked, decoded, and read element by element within bounds of size, depth, entities and
 * time. Knows nothing of music.
 */
package groundbass.intake.xml.document;
