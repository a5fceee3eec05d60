package groundbass.engraving;

import groundbass.score.Passage;
import java.util.List;
import java.util.function.Function;

/**
 * One line's pages, as a part of a document.
 *
 * @param wordsOf the music of a passage in words, for readers who cannot see it
 */
public record Sheet(List<Page> pages, Function<Passage, String> wordsOf) {
    public Sheet {
        pages = List.copyOf(pages);
    }
}
