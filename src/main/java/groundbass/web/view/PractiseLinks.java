package groundbass.web.view;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.net.URLEncoder;
import java.util.Optional;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.commonmark.node.AbstractVisitor;
import org.commonmark.node.Link;
import org.commonmark.node.Node;

/**
 * Links in notes that lead to a passage of the lesson's line: {@code [bars 3 and 4](practise:3-4)},
 * {@code [slowly](practise:3.1-4.4@60)} with the tempo in beats a minute, {@code [again](practise:3x2)} for the second time
 * that a bar is played. On the page they set the loop of the player.
 */
final class PractiseLinks extends AbstractVisitor {
    private static final String PLACE = "([0-9]{1,4}(?:\\.[0-9]{1,2}[e&a]?)?(?:x[0-9]{1,2})?)";
    private static final Pattern PASSAGE =
            Pattern.compile("practise:" + PLACE + "(?:-" + PLACE + ")?(?:@([0-9]{2,3}))?");

    private PractiseLinks() {}

    /** Turns the links of a document into addresses on its own page. */
    static void resolve(Node document) {
        document.accept(new PractiseLinks());
    }

    @Override
    public void visit(Link link) {
        address(link.getDestination()).ifPresent(link::setDestination);
        visitChildren(link);
    }

    private static Optional<String> address(String destination) {
        var passage = PASSAGE.matcher(destination);
        return passage.matches() ? Optional.of(address(passage)) : Optional.empty();
    }

    private static String address(Matcher passage) {
        String from = passage.group(1);
        String to = passage.group(2) == null ? from : passage.group(2);
        String tempo = passage.group(3) == null ? "" : "&tempo=" + passage.group(3);
        return "?from=" + encoded(from) + "&to=" + encoded(to) + tempo + "#sheet";
    }

    private static String encoded(String place) {
        return URLEncoder.encode(place, UTF_8);
    }
}
