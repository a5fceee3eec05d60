package groundbass.web.view;

import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Consumer;
import org.commonmark.node.AbstractVisitor;
import org.commonmark.node.Heading;
import org.commonmark.node.Node;
import org.commonmark.parser.Parser;
import org.commonmark.renderer.html.HtmlRenderer;
import org.owasp.html.HtmlPolicyBuilder;
import org.owasp.html.PolicyFactory;

/** Notes in Markdown (CommonMark) as HTML for a page. Only words, lists, links and code come through. Thread-safe. */
public final class Markdown {
    private static final int LOWEST = 6;
    private static final Parser PARSER = Parser.builder().build();
    private static final HtmlRenderer RENDERER =
            HtmlRenderer.builder().escapeHtml(true).build();
    private static final PolicyFactory POLICY = new HtmlPolicyBuilder()
            .allowElements("p", "h2", "h3", "h4", "h5", "h6", "ul", "ol", "li", "blockquote", "hr", "br")
            .allowElements("em", "strong", "code", "pre", "a")
            .allowAttributes("href")
            .onElements("a")
            .allowAttributes("start")
            .matching(number -> number.matches("[0-9]{1,6}"))
            .onElements("ol")
            .allowUrlProtocols("https", "http", "mailto")
            .requireRelNofollowOnLinks()
            .toFactory();

    private Markdown() {}

    /**
     * HTML that is safe to show.
     *
     * @param top the level that the highest heading gets, so that the outline of the page stays whole
     */
    public static String html(String markdown, int top) {
        var document = PARSER.parse(markdown);
        var highest = new AtomicInteger(LOWEST);
        headings(document, heading -> highest.accumulateAndGet(heading.getLevel(), Math::min));
        headings(document, heading -> heading.setLevel(Math.min(LOWEST, heading.getLevel() - highest.get() + top)));
        return POLICY.sanitize(RENDERER.render(document));
    }

    private static void headings(Node document, Consumer<Heading> each) {
        document.accept(new AbstractVisitor() {
            @Override
            public void visit(Heading heading) {
                each.accept(heading);
            }
        });
    }
}
