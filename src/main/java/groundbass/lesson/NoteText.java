package groundbass.lesson;

import java.util.List;
import java.util.regex.Pattern;
import org.commonmark.Extension;
import org.commonmark.ext.autolink.AutolinkExtension;
import org.commonmark.ext.autolink.AutolinkType;
import org.commonmark.ext.gfm.tables.TablesExtension;
import org.commonmark.node.Node;
import org.commonmark.node.Text;
import org.commonmark.parser.IncludeSourceSpans;
import org.commonmark.parser.Parser;

/**
 * Notes in Markdown (CommonMark 0.31; tables and bare addresses as in GitHub Flavored Markdown 0.29), read within bounds. What the library does with a mark may depend on all marks
 * before it, so their number is bounded, and with it the time that any text needs.
 */
public final class NoteText {
    /** Links and pictures that one text may have: each begins with a bracket. */
    public static final int MOST_LINKS = 500;

    private static final int MOST_MARKS = 4_000;
    private static final int DEEPEST = 24;
    /** Cells of tables: each line below a head has as many as the head, however little is typed in it. */
    private static final int MOST_CELLS = 6_000;

    private static final String BRACKETS = "[]";
    private static final String MARKS = "*_`<>&!~\\";

    private static final List<Extension> TABLES = List.of(TablesExtension.create());
    private static final Parser PARSER = Parser.builder()
            .extensions(TABLES)
            .extensions(List.of(
                    AutolinkExtension.builder().linkTypes(AutolinkType.URL).build()))
            .maxOpenBlockParsers(DEEPEST)
            .maxInlineNesting(DEEPEST)
            .includeSourceSpans(IncludeSourceSpans.BLOCKS_AND_INLINES) // so that what is wrong is told with its line
            .build();

    private static final Pattern ADDRESS = Pattern.compile("://");

    private NoteText() {}

    /** Whether the text has more marks than anybody sets by hand; it is then shown as it was typed. */
    public static boolean isTooMuch(String notes) {
        return count(notes, BRACKETS) > 2 * MOST_LINKS
                || count(notes, MARKS) > MOST_MARKS
                || addresses(notes) > MOST_LINKS
                || cells(notes) > MOST_CELLS;
    }

    /** What renderers of these notes have to know, beside CommonMark. */
    public static List<Extension> extensions() {
        return TABLES;
    }

    private static long addresses(String notes) {
        return ADDRESS.matcher(notes).results().count();
    }

    /** At most so many: as if every line stood below the widest of them. */
    private static long cells(String notes) {
        long bars = notes.lines().mapToLong(line -> count(line, "|")).max().orElse(0);
        return bars == 0 ? 0 : (bars + 1) * notes.lines().count();
    }

    /** The text as a document. Ask {@link #isTooMuch} before. */
    public static Node read(String notes) {
        return PARSER.parse(notes);
    }

    /** The plain words of a node: of a picture, those that stand for it. */
    public static String words(Node node) {
        var text = new StringBuilder();
        for (var child = node.getFirstChild(); child != null; child = child.getNext()) {
            text.append(child instanceof Text plain ? plain.getLiteral() : words(child));
        }
        return text.toString();
    }

    private static long count(String notes, String of) {
        return notes.chars().filter(c -> of.indexOf(c) >= 0).count();
    }
}
