package groundbass.musicxml;

import groundbass.score.Credits;
import groundbass.score.Line;
import groundbass.writing.Writing;
import groundbass.writing.WrittenLine;

/**
 * A line as a MusicXML 4.0 document (W3C Music Notation Community Group, 2021) in UTF-8, partwise, without a document
 * type, so that no reader is led to fetch one. The same line and credits give the same bytes. What of a line has an
 * element of its own, and what stands in its place otherwise, is told in {@code src/main/docs/musicxml.md}.
 */
public final class MusicXmlFile {
    /** The media type of the plain file. */
    public static final String MEDIA_TYPE = "application/vnd.recordare.musicxml+xml";

    private MusicXmlFile() {}

    /** With what the line says of itself. */
    public static byte[] of(Line line) {
        return of(Writing.of(line), Credits.of(line.header()));
    }

    public static byte[] of(WrittenLine line, Credits credits) {
        return XmlText.bytes(ScoreDocument.of(line, credits));
    }
}
