package groundbass.engraving.pdf;

import java.time.Instant;

/**
 * What a sheet says of itself where it is not drawn.
 *
 * @param language of its words, a BCP 47 tag
 * @param made when, as the file says; passed in, so that the same sheet gives the same bytes
 * @param id a number that differs from document to document
 */
public record SheetMeta(String title, String author, String language, Instant made, long id) {}
