package groundbass.identity;

import java.text.Normalizer;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;

/**
 * A name for addresses and file names: small letters a to z and digits in words joined by single hyphens, at most 60
 * characters.
 */
public record Slug(String value) implements TextValue {
    private static final int LONGEST = 60;
    private static final Pattern FORM = Pattern.compile("[a-z0-9]+(-[a-z0-9]+)*");
    private static final Pattern MARKS = Pattern.compile("\\p{M}+");
    private static final Pattern APOSTROPHES = Pattern.compile("['\u2018\u2019\u02bc]");
    private static final Pattern OTHERS = Pattern.compile("[^a-z0-9]+");
    private static final Pattern EDGES = Pattern.compile("^-+|-+$");

    /** Latin letters that Unicode does not take apart into a letter and a mark. */
    private static final Map<String, String> LETTERS = Map.ofEntries(
            Map.entry("ß", "ss"),
            Map.entry("æ", "ae"),
            Map.entry("œ", "oe"),
            Map.entry("ø", "o"),
            Map.entry("đ", "d"),
            Map.entry("ð", "d"),
            Map.entry("þ", "th"),
            Map.entry("ł", "l"),
            Map.entry("ħ", "h"),
            Map.entry("ı", "i"),
            Map.entry("♯", " sharp "),
            Map.entry("♭", " flat "));

    public Slug {
        if (!isSlug(value)) {
            throw new IllegalArgumentException("not a slug: " + value);
        }
    }

    private static boolean isSlug(String value) {
        return value.length() <= LONGEST && FORM.matcher(value).matches();
    }

    /** Reads text from outside; empty where it is not a slug. */
    public static Optional<Slug> parse(String text) {
        return isSlug(text) ? Optional.of(new Slug(text)) : Optional.empty();
    }

    /**
     * Makes a slug of a title: letters lose their marks (Unicode compatibility decomposition, UAX 15), apostrophes
     * vanish, all else separates words.
     *
     * @param fallback for a title without any Latin letter or digit
     */
    public static Slug of(String title, Slug fallback) {
        String folded = OTHERS.matcher(fold(title)).replaceAll("-");
        String cut = folded.substring(0, Math.min(folded.length(), LONGEST + 1));
        return parse(EDGES.matcher(wholeWords(cut)).replaceAll("")).orElse(fallback);
    }

    private static String fold(String title) {
        String folded = Normalizer.normalize(title, Normalizer.Form.NFKD).toLowerCase(Locale.ROOT);
        for (var letter : LETTERS.entrySet()) {
            folded = folded.replace(letter.getKey(), letter.getValue());
        }
        folded = MARKS.matcher(folded).replaceAll("");
        return APOSTROPHES.matcher(folded).replaceAll("");
    }

    /** Drops a last word that the limit cut through, unless it is the only one. */
    private static String wholeWords(String cut) {
        if (cut.length() <= LONGEST) {
            return cut;
        }
        int lastWord = cut.lastIndexOf('-');
        return cut.substring(0, lastWord > 0 ? lastWord : LONGEST);
    }

    /** This slug with a number behind it, shortened where needed: {@code walking-2}. */
    public Slug numbered(int number) {
        String end = "-" + number;
        String start = value.substring(0, Math.min(value.length(), LONGEST - end.length()));
        return new Slug(EDGES.matcher(start).replaceAll("") + end);
    }

    @Override
    public String toString() {
        return value;
    }
}
