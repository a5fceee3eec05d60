package groundbass.lesson;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import org.commonmark.node.AbstractVisitor;
import org.commonmark.node.Link;
import org.commonmark.node.Node;
import org.commonmark.node.Text;

/** The links of a lesson's notes (CommonMark 0.31, section 6.3), with those that were meant and are none. */
public final class NoteLinks {
    /** A link to a passage of the line, or one inside the site. */
    private static final Pattern ON_THE_PAGE = Pattern.compile("practise:.*|[/#?].*");

    /** A destination with a space in it is none, and the text stands there as it was typed. */
    private static final Pattern UNREAD = Pattern.compile("]\\((https?:[^)]*)\\)");

    private NoteLinks() {}

    /**
     * A link.
     *
     * @param address as typed
     * @param line of the notes, from 1
     */
    public record NoteLink(String address, int line) {
        /** Whether it leads to no other site, so that its form is no address on the web. */
        public boolean isOnThePage() {
            return ON_THE_PAGE.matcher(address).matches();
        }
    }

    /** In the order of the text; none where the text has more of them than are read. */
    public static List<NoteLink> of(String notes) {
        if (NoteText.isTooMuch(notes)) {
            return List.of(); // it is shown as it was typed
        }
        var links = new ArrayList<NoteLink>();
        NoteText.read(notes).accept(new AbstractVisitor() {
            @Override
            public void visit(Link link) {
                links.add(new NoteLink(meant(link), line(link)));
                visitChildren(link);
            }

            @Override
            public void visit(Text text) {
                UNREAD.matcher(text.getLiteral())
                        .results()
                        .forEach(found -> links.add(new NoteLink(found.group(1), line(text))));
            }
        });
        return List.copyOf(links);
    }

    /** Of a destination with a space in it, the first part is read as a bare address: what was meant is all of it. */
    private static String meant(Link link) {
        boolean begun =
                link.getPrevious() instanceof Text before && before.getLiteral().endsWith("](");
        return begun && link.getNext() instanceof Text after
                ? link.getDestination() + after.getLiteral().split("\\)", 2)[0]
                : link.getDestination();
    }

    static int line(Node node) {
        var spans = node.getSourceSpans();
        return spans.isEmpty() ? 1 : spans.get(0).getLineIndex() + 1;
    }
}
