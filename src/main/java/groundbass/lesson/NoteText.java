package groundbass.lesson;

import org.commonmark.node.Node;
import org.commonmark.parser.IncludeSourceSpans;
import org.commonmark.parser.Parser;

/**
 * Notes in Markdown (CommonMark 0.31), read within bounds. What the library does with a mark may depend on all marks
 * before it, so their number is bounded, and with it the time that any text needs.
 */
public final class NoteText {
    /** Links and pictures that one text may have: each begins with a bracket. */
    public static final int MOST_LINKS = 500;

    private static final int MOST_MARKS = 4_000;
    private static final int DEEPEST = 24;
    private static final String BRACKETS = "[]";
    private static final String MARKS = "*_`<>&!~\\";

    private static final Parser PARSER = Parser.builder()
            .maxOpenBlockParsers(DEEPEST)
            .maxInlineNesting(DEEPEST)
            .includeSourceSpans(IncludeSourceSpans.BLOCKS_AND_INLINES) // so that what is wrong is told with its line
            .build();

    private NoteText() {}

    /** Whether the text has more marks than anybody sets by hand; it is then shown as it was typed. */
    public static boolean isTooMuch(String notes) {
        return count(notes, BRACKETS) > 2 * MOST_LINKS || count(notes, MARKS) > MOST_MARKS;
    }

    /** The text as a document. Ask {@link #isTooMuch} before. */
    public static Node read(String notes) {
        return PARSER.parse(notes);
    }

    private static long count(String notes, String of) {
        return notes.chars().filter(c -> of.indexOf(c) >= 0).count();
    }
}
