package groundbass.document;

import java.util.Arrays;
import java.util.Locale;

/** What a series' sheets are printed on. */
public enum SheetPaper {
    /** ISO 216: 210 by 297 millimetres. */
    A4,
    /** ANSI/ASME Y14.1, size A: 8.5 by 11 inches. */
    LETTER;

    /** Reads what {@link #toString} wrote; A4 where nothing is chosen. */
    public static SheetPaper parse(String text) {
        return Arrays.stream(values())
                .filter(paper -> paper.toString().equals(text))
                .findFirst()
                .orElse(A4);
    }

    @Override
    public String toString() {
        return name().toLowerCase(Locale.ROOT);
    }
}
