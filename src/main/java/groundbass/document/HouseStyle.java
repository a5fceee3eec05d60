package groundbass.document;

import java.util.Objects;

/** How a series has its sheets, where usage differs between teachers. */
public record HouseStyle(SheetLetters letters, SheetAbbreviations abbreviations, SheetPaper paper, SheetAids aids) {
    public static final HouseStyle USUAL =
            new HouseStyle(SheetLetters.USUAL, SheetAbbreviations.NONE, SheetPaper.A4, SheetAids.USUAL);

    public HouseStyle {
        Objects.requireNonNull(letters);
        Objects.requireNonNull(abbreviations);
        Objects.requireNonNull(paper);
        Objects.requireNonNull(aids);
    }
}
