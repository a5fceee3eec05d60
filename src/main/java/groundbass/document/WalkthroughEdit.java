package groundbass.document;

import java.util.Objects;

/**
 * What an educator says in place of a step of the walkthrough.
 *
 * @param line     which line of the episode: 0 for the main one, then the exercises in order
 * @param anchor   a digest of the notes that it speaks of, so that it finds them again when bars move
 * @param bar      the number of the bar that they stood in when it was written; told where they are no longer found
 * @param sentence what is said instead
 */
public record WalkthroughEdit(int line, String anchor, int bar, String sentence) {
    public WalkthroughEdit {
        Objects.requireNonNull(anchor);
        Objects.requireNonNull(sentence);
    }
}
