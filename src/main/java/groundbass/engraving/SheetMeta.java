package groundbass.engraving;

import groundbass.score.Passage;
import java.time.Instant;
import java.util.function.Function;

/**
 * What a sheet says of itself where it is not drawn.
 *
 * @param language of its words, a BCP 47 tag
 * @param made when, as the file says; passed in, so that the same sheet gives the same bytes
 * @param id a number that differs from document to document
 * @param wordsOf the music of a passage in words, for readers who cannot see it
 */
public record SheetMeta(
        String title, String author, String language, Instant made, long id, Function<Passage, String> wordsOf) {}
