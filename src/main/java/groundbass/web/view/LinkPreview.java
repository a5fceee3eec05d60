package groundbass.web.view;

import java.util.Objects;
import java.util.Optional;

/**
 * What somebody sees of a page before opening it: a search engine's lines, a card in a chat.
 *
 * @param description one or two sentences
 * @param article whether it is a piece of its own, and not a list
 * @param picture the path of a picture of {@value #WIDTH} by {@value #HEIGHT} pixels
 */
public record LinkPreview(String description, boolean article, Optional<String> picture) {
    /** Nearly two to one, as cards are shaped (common practice, no source). */
    private static final int WIDTH = 1200;

    private static final int HEIGHT = 630;

    public LinkPreview {
        Objects.requireNonNull(description);
        Objects.requireNonNull(picture);
    }

    /** For a template, which sees no constants. */
    public int width() {
        return WIDTH;
    }

    public int height() {
        return HEIGHT;
    }

    /** A page's record that says how the page is shown before it is opened. Any other page is not described. */
    public interface Shown {
        LinkPreview preview();
    }
}
