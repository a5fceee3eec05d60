package groundbass.lesson;

import java.text.Normalizer;
import java.util.Locale;
import java.util.SortedSet;
import java.util.TreeSet;
import java.util.regex.Pattern;

/**
 * Words as they are looked for: small, without accents, letters and digits alone, so that what a reader types meets what
 * an educator wrote. Both sides pass through here.
 */
public final class SearchWords {
    /** Longer ones are cut off; nobody types so much of a word. */
    private static final int LONGEST = 40;

    private static final Pattern BETWEEN = Pattern.compile("[^\\p{L}\\p{N}]+");
    private static final Pattern MARKS = Pattern.compile("\\p{M}+");

    private SearchWords() {}

    /** Each word of these texts once, in order. */
    public static SortedSet<String> of(Iterable<String> texts) {
        var words = new TreeSet<String>();
        for (String text : texts) {
            for (String word : BETWEEN.split(folded(text))) {
                if (!word.isEmpty()) {
                    words.add(word.substring(0, Math.min(word.length(), LONGEST)));
                }
            }
        }
        return words;
    }

    /** Compatible signs are one (Unicode Standard Annex 15, form NFKD), and the marks over letters are left away. */
    private static String folded(String text) {
        String small = text.toLowerCase(Locale.ROOT).replace("ß", "ss");
        return MARKS.matcher(Normalizer.normalize(small, Normalizer.Form.NFKD)).replaceAll("");
    }
}
