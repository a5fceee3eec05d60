package groundbass.engraving.sheet;

import groundbass.engraving.mark.Group;
import groundbass.engraving.mark.Page;
import groundbass.engraving.options.SheetWords;
import groundbass.score.Passage;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;

/**
 * The pages of a line, or of several that follow one another, and of the words after them.
 *
 * @param wordsOf for each line in turn, the music of a passage in words, for readers who cannot see it
 */
public record Sheet(List<Page> pages, List<Function<Passage, String>> wordsOf) {
    public Sheet {
        pages = List.copyOf(pages);
        wordsOf = List.copyOf(wordsOf);
    }

    /** Pages of one line. */
    public Sheet(List<Page> pages, Function<Passage, String> wordsOf) {
        this(pages, List.of(wordsOf));
    }

    /**
     * The same with numbers on its pages.
     *
     * @param title what a loose page belongs to
     */
    public Sheet numbered(String title, SheetWords words) {
        return new Sheet(PageNumbers.on(pages, title, words), wordsOf);
    }

    /** What a group's music is in words, if it is of music. */
    public Optional<String> words(Group group) {
        return group.passage().map(wordsOf.get(group.piece()));
    }
}
