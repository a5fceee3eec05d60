package groundbass.release;

import groundbass.identity.TextValue;
import java.util.Locale;

/** What a file of a release is for. */
public enum FileRole implements TextValue {
    /** Everything in one zip, kept as a file; of releases of earlier versions. */
    BUNDLE,
    /** Everything in one zip, which is put together from the other files while it is sent. */
    ZIP,
    /** The printable sheet. */
    SHEET,
    /** The line as a Standard MIDI File. */
    MIDI,
    /** The line for other music programs. */
    MUSICXML,
    /** The line as tablature in plain text. */
    PLAIN_TAB,
    /** The line as music braille for embossers and displays. */
    BRAILLE,
    /** The same cells as Unicode text. */
    BRAILLE_TEXT,
    /** The line as text. */
    LINE_TEXT,
    /** The band at a tempo to practise at. */
    PRACTICE,
    /** The band at the full tempo without loss; too large for the bundle. Of releases of earlier versions. */
    LOSSLESS,
    /** A practice track that was made when somebody asked for it, and may go again; no part of the bundle, whose files never change. */
    ON_REQUEST,
    /** A recording of the educator's own. */
    OWN_TRACK,
    /** What is what, credits, rights, cautions. */
    READ_ME,
    /** A picture of the sheet for the page; part of the page, offered to nobody as a file. */
    PICTURE,
    /** A picture of the educator's own in the notes; part of the page, offered to nobody as a file. */
    NOTE_PICTURE,
    /** What the page says, as data; offered to nobody as a file. */
    PAGE,
    /** What the page plays along with, as data; offered to nobody as a file. */
    PLAY,
    /** One stem at one tempo, cut at bar lines for the page; offered to nobody as a file. */
    STEM;

    /** Whether a reader is shown this file to take home. */
    public boolean isOffered() {
        return switch (this) {
            case BUNDLE,
                    ZIP,
                    SHEET,
                    MIDI,
                    MUSICXML,
                    PLAIN_TAB,
                    BRAILLE,
                    BRAILLE_TEXT,
                    LINE_TEXT,
                    PRACTICE,
                    LOSSLESS,
                    ON_REQUEST,
                    OWN_TRACK,
                    READ_ME -> true;
            case PICTURE, NOTE_PICTURE, PAGE, PLAY, STEM -> false;
        };
    }

    /** Whether the file goes into the bundle. */
    public boolean isBundled() {
        return isOffered() && !isBundle() && this != LOSSLESS && this != ON_REQUEST;
    }

    /** Whether it is all files in one. */
    public boolean isBundle() {
        return this == BUNDLE || this == ZIP;
    }

    /** Whether it lies among the stored files. */
    public boolean isStored() {
        return this != ZIP;
    }

    /** Whether the page fetches it by itself: what it plays, and what its notes show. */
    public boolean isPlayed() {
        return switch (this) {
            case PRACTICE, OWN_TRACK, NOTE_PICTURE, PLAY, STEM -> true;
            case BUNDLE,
                    ZIP,
                    SHEET,
                    MIDI,
                    MUSICXML,
                    PLAIN_TAB,
                    BRAILLE,
                    BRAILLE_TEXT,
                    LINE_TEXT,
                    LOSSLESS,
                    ON_REQUEST,
                    READ_ME,
                    PICTURE,
                    PAGE -> false;
        };
    }

    @Override
    public String value() {
        return name().toLowerCase(Locale.ROOT);
    }
}
