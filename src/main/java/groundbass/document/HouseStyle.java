package groundbass.document;

import java.util.Objects;

/** How a series has its sheets, where usage differs between teachers. */
public record HouseStyle(SheetLetters letters, SheetAbbreviations abbreviations) {
    public static final HouseStyle USUAL = new HouseStyle(SheetLetters.USUAL, SheetAbbreviations.NONE);

    public HouseStyle {
        Objects.requireNonNull(letters);
        Objects.requireNonNull(abbreviations);
    }
}
