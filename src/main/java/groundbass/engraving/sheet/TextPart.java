package groundbass.engraving.sheet;

import java.util.List;

/**
 * Words that are printed after the music.
 *
 * @param heading what stands over all of it
 * @param lead what is said first; may be empty
 */
public record TextPart(String heading, String lead, List<Entry> entries) {
    public TextPart {
        entries = List.copyOf(entries);
    }

    /** Some paragraphs under a name of their own, such as a bar's. */
    public record Entry(String name, List<String> items) {
        public Entry {
            items = List.copyOf(items);
        }
    }
}
