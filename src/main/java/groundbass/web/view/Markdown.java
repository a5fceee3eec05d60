package groundbass.web.view;

import groundbass.lesson.NoteText;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.Consumer;
import java.util.regex.MatchResult;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.commonmark.node.AbstractVisitor;
import org.commonmark.node.Heading;
import org.commonmark.node.Image;
import org.commonmark.node.Node;
import org.commonmark.node.Text;
import org.commonmark.renderer.html.HtmlRenderer;
import org.owasp.html.HtmlPolicyBuilder;
import org.owasp.html.PolicyFactory;

/** Notes in Markdown (CommonMark) as HTML for a page. Only words, lists, tables, links and code come through. Thread-safe. */
final class Markdown {
    private static final int LOWEST = 6;
    /** A character without meaning (Unicode, private use area), taken out of what was typed. */
    private static final String PLACE = "\uE000";

    private static final Pattern MARK = Pattern.compile("(<p>)?" + PLACE + "([0-9]{1,4})" + PLACE + "(</p>)?");
    private static final int MOST_FIGURES = 100;
    /** Characters of all pictures of a text: each showing is a drawing of its own in the page. */
    private static final int MOST_DRAWN = 1_000_000;

    private static final HtmlRenderer RENDERER = HtmlRenderer.builder()
            .extensions(NoteText.extensions())
            .escapeHtml(true)
            .build();
    private static final PolicyFactory POLICY = new HtmlPolicyBuilder()
            .allowElements("p", "h2", "h3", "h4", "h5", "h6", "ul", "ol", "li", "blockquote", "hr", "br")
            .allowElements("em", "strong", "code", "pre", "a")
            .allowElements("table", "thead", "tbody", "tr", "th", "td")
            .allowAttributes("href")
            .onElements("a")
            .allowAttributes("start")
            .matching(number -> number.matches("[0-9]{1,6}"))
            .onElements("ol")
            .allowUrlProtocols("https", "http", "mailto")
            .requireRelNofollowOnLinks()
            .toFactory();

    private Markdown() {}

    /** Knows the pictures that are ours. */
    interface Pictures {
        Pictures NONE = (address, words, title) -> Optional.empty();

        /**
         * What stands for an image.
         *
         * @param words that stand for it where it is not seen
         * @param title that was typed behind the address; empty where none was
         * @return empty for what is none of ours
         */
        Optional<Figure> of(String address, String words, String title);
    }

    /**
     * HTML that is safe to show.
     *
     * @param top the level that the highest heading gets, so that the outline of the page stays whole
     */
    public static String html(String markdown, int top) {
        return html(markdown, top, Pictures.NONE);
    }

    /**
     * HTML that is safe to show, with pictures of our own set in.
     *
     * @param pictures that are ours; one without markup has nothing to show, which leaves the words
     */
    static String html(String markdown, int top, Pictures pictures) {
        if (NoteText.isTooMuch(markdown)) {
            return asTyped(markdown);
        }
        var document = NoteText.read(markdown.replace(PLACE, ""));
        var highest = new AtomicInteger(LOWEST);
        headings(document, heading -> highest.accumulateAndGet(heading.getLevel(), Math::min));
        headings(document, heading -> heading.setLevel(Math.min(LOWEST, heading.getLevel() - highest.get() + top)));
        PractiseLinks.resolve(document);
        var figures = new Figures(pictures);
        document.accept(figures);
        return figures.setInto(POLICY.sanitize(RENDERER.render(document)));
    }

    private static String asTyped(String text) {
        return "<pre>" + RENDERER.render(new Text(text.replace(PLACE, ""))) + "</pre>";
    }

    /**
     * A picture that is shown.
     *
     * @param picture markup of ours; empty where there is nothing to show
     * @param caption what stands under it where it stands alone; empty for none
     */
    record Figure(String picture, String caption) {
        private String alone() {
            String caption = this.caption.isEmpty()
                    ? ""
                    : "<figcaption>" + RENDERER.render(new Text(this.caption)) + "</figcaption>";
            return "<figure class=\"notes-piece\">" + picture + caption + "</figure>";
        }

        /** Among words, where no figure may stand. */
        private String inline() {
            return "<span class=\"notes-piece\">" + picture + "</span>";
        }
    }

    /** Leaves marks where our pictures belong, since the sanitizer lets no picture through, and sets them in after it. */
    private static final class Figures extends AbstractVisitor {
        private final Pictures pictures;
        private final List<Figure> found = new ArrayList<>();
        private int drawn;

        Figures(Pictures pictures) {
            this.pictures = pictures;
        }

        @Override
        public void visit(Image image) {
            String words = NoteText.words(image);
            String title = Objects.requireNonNullElse(image.getTitle(), "");
            pictures.of(image.getDestination(), words, title).ifPresent(figure -> {
                String mark = figure.picture().isEmpty() || isFull(figure.picture())
                        ? "[" + (words.isEmpty() ? image.getDestination() : words) + "]"
                        : mark(figure);
                image.insertBefore(new Text(mark));
                image.unlink();
            });
        }

        private boolean isFull(String picture) {
            return found.size() >= MOST_FIGURES || drawn + picture.length() > MOST_DRAWN;
        }

        private String mark(Figure figure) {
            drawn += figure.picture().length();
            found.add(figure);
            return PLACE + (found.size() - 1) + PLACE;
        }

        /** In one pass, however many there are. */
        String setInto(String html) {
            return MARK.matcher(html).replaceAll(mark -> Matcher.quoteReplacement(set(mark)));
        }

        private String set(MatchResult mark) {
            var figure = found.get(Integer.parseInt(mark.group(2)));
            if (mark.group(1) != null && mark.group(3) != null) {
                return figure.alone();
            }
            String before = mark.group(1) == null ? "" : mark.group(1);
            String after = mark.group(3) == null ? "" : mark.group(3);
            return before + figure.inline() + after;
        }
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
