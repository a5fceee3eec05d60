package groundbass.midi;

import java.text.Normalizer;
import java.util.Map;
import java.util.regex.Pattern;

/** The 1.0 text of Standard MIDI Files names no encoding but ASCII, so nothing else is written. */
final class Ascii {
    private static final Pattern MARKS = Pattern.compile("\\p{M}+");
    private static final Pattern OTHERS = Pattern.compile("[^\\x20-\\x7e]");
    private static final Map<String, String> NEAREST = Map.ofEntries(
            Map.entry("♯", "#"),
            Map.entry("♭", "b"),
            Map.entry("ß", "ss"),
            Map.entry("æ", "ae"),
            Map.entry("Æ", "AE"),
            Map.entry("ø", "o"),
            Map.entry("Ø", "O"),
            Map.entry("œ", "oe"),
            Map.entry("ł", "l"),
            Map.entry("–", "-"),
            Map.entry("—", "-"),
            Map.entry("’", "'"),
            Map.entry("‘", "'"),
            Map.entry("“", "\""),
            Map.entry("”", "\""),
            Map.entry("©", "(c)"));

    private Ascii() {}

    /** The text without accents, with a question mark for what has no likeness. */
    static String of(String text) {
        String replaced = text;
        for (var entry : NEAREST.entrySet()) {
            replaced = replaced.replace(entry.getKey(), entry.getValue());
        }
        String bare = MARKS.matcher(Normalizer.normalize(replaced, Normalizer.Form.NFKD))
                .replaceAll("");
        return OTHERS.matcher(bare).replaceAll("?");
    }
}
