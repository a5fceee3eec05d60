package groundbass.catalog;

import java.util.Objects;

/**
 * A sentence of the walkthrough that the educator put in place of the program's.
 *
 * @param anchor   a digest of the notes that it speaks of, so that it finds them again when bars move
 * @param sentence what is said instead
 */
public record WalkthroughEdit(String anchor, String sentence) {
    public WalkthroughEdit {
        Objects.requireNonNull(anchor);
        Objects.requireNonNull(sentence);
    }
}
