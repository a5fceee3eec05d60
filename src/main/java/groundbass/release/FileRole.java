package groundbass.release;

import java.util.Locale;

/** What a file of a release is for. */
public enum FileRole {
    /** Everything in one zip. */
    BUNDLE,
    /** The printable sheet. */
    SHEET,
    /** The line as a Standard MIDI File. */
    MIDI,
    /** The line as text. */
    LINE_TEXT,
    /** The band at a tempo to practise at. */
    PRACTICE,
    /** A recording of the educator's own. */
    OWN_TRACK,
    /** What is what, credits, rights, cautions. */
    READ_ME,
    /** A picture of the sheet for the page; part of the page, offered to nobody as a file. */
    PICTURE,
    /** What the page says, as data; offered to nobody as a file. */
    PAGE;

    /** Whether a reader is shown this file to take home. */
    public boolean isOffered() {
        return this != PICTURE && this != PAGE;
    }

    /** Whether the file goes into the bundle. */
    public boolean isBundled() {
        return isOffered() && this != BUNDLE;
    }

    String column() {
        return name().toLowerCase(Locale.ROOT);
    }

    static FileRole ofColumn(String text) {
        return valueOf(text.toUpperCase(Locale.ROOT));
    }
}
