package groundbass.document;

import java.util.Arrays;
import java.util.List;

/**
 * What a series' printed sheets say shorter than note by note. As text: {@code simile rests}.
 *
 * @param simile whether a bar that repeats the one before it is printed as a repeat sign
 * @param restsTogether whether one sign stands for silent bars that follow one another
 */
public record SheetAbbreviations(boolean simile, boolean restsTogether) {
    private static final String SIMILE = "simile";
    private static final String RESTS = "rests";

    /** Every bar is written out. */
    public static final SheetAbbreviations NONE = new SheetAbbreviations(false, false);

    /** Reads what {@link #toString} wrote. */
    public static SheetAbbreviations parse(String text) {
        List<String> words = Arrays.asList(text.split(" "));
        return new SheetAbbreviations(words.contains(SIMILE), words.contains(RESTS));
    }

    @Override
    public String toString() {
        return ((simile ? SIMILE : "") + " " + (restsTogether ? RESTS : "")).strip();
    }
}
