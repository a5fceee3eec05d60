package groundbass.document;

import java.util.Arrays;
import java.util.List;

/**
 * What a series' printed sheets have beside the music to help their readers. As text: {@code counts-all numbers}.
 *
 * @param everyBar whether every bar has its number
 */
public record SheetAids(CountsRow counts, boolean everyBar) {
    private static final String NUMBERS = "numbers";

    /** Counts under exercises, numbers at each system's first bar. */
    public static final SheetAids USUAL = new SheetAids(CountsRow.EXERCISES, false);

    /** Which lines have a row of counts under them. */
    public enum CountsRow {
        EXERCISES("exercises"),
        ALL("all"),
        NONE("none");

        private final String code;

        CountsRow(String code) {
            this.code = code;
        }

        /** For forms. */
        public String code() {
            return code;
        }

        /** Reads a {@link #code}; the usual one where it is none. */
        public static CountsRow parse(String code) {
            return Arrays.stream(values())
                    .filter(row -> row.code.equals(code))
                    .findFirst()
                    .orElse(EXERCISES);
        }

        private String word() {
            return "counts-" + code;
        }
    }

    /** Reads what {@link #toString} wrote. */
    public static SheetAids parse(String text) {
        List<String> words = Arrays.asList(text.split(" "));
        var counts = Arrays.stream(CountsRow.values())
                .filter(row -> words.contains(row.word()))
                .findFirst()
                .orElse(CountsRow.EXERCISES);
        return new SheetAids(counts, words.contains(NUMBERS));
    }

    /** Empty where it is the usual. */
    @Override
    public String toString() {
        return ((counts == CountsRow.EXERCISES ? "" : counts.word()) + " " + (everyBar ? NUMBERS : "")).strip();
    }
}
