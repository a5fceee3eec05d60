package groundbass.text;

import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Stream;

/** The languages Groundbass speaks, and which of them a reader gets. */
public final class Languages {
    /** The first is spoken to whoever asks for none of them. */
    public static final List<Locale> SPOKEN = List.of(Locale.ENGLISH, Locale.GERMAN);

    private static final int LONGEST = 1_000;
    /** RFC 9110 sections 12.4.2 and 12.5.4, RFC 4647 section 2.1; the library fails on what is neither. */
    private static final Pattern RANGES = listOf(
            "([A-Za-z]{1,8}(-[A-Za-z0-9]{1,8})*|\\*)" + "([ \t]*;[ \t]*[qQ]=(0(\\.[0-9]{0,3})?|1(\\.0{0,3})?))?");

    /** Where a language that is spoken here is written: regions that differ in dates and numbers (Unicode CLDR). */
    private static final Map<String, Set<String>> REGIONS = Map.of(
            "en", Set.of("AU", "CA", "GB", "IE", "IN", "NZ", "US", "ZA"),
            "de", Set.of("AT", "CH", "DE", "LI", "LU"));

    private Languages() {}

    private static Pattern listOf(String element) {
        return Pattern.compile("[ \t]*" + element + "([ \t]*,[ \t]*" + element + ")*[ \t]*");
    }

    /**
     * The best spoken language for an {@code Accept-Language} header (RFC 9110 section 12.5.4, matched by the lookup of
     * RFC 4647 section 3.4), or {@code otherwise} where none is wished that is spoken. Anything that is not such a header
     * counts as no wish at all; so does a language that is not spoken as {@code otherwise}.
     */
    public static Locale spoken(Optional<String> acceptLanguage, Locale otherwise) {
        return acceptLanguage.flatMap(Languages::lookUp).orElseGet(() -> spoken(otherwise));
    }

    /** The spoken language that is nearest to {@code locale}. */
    public static Locale spoken(Locale locale) {
        return lookUp(locale.toLanguageTag()).orElse(SPOKEN.get(0));
    }

    /**
     * How dates and numbers are written for whoever is spoken to in a language: as in the region that an {@code
     * Accept-Language} header names with it, if it names one that is known.
     */
    public static Locale written(Optional<String> acceptLanguage, Locale spoken) {
        return acceptLanguage
                .filter(header -> header.length() <= LONGEST)
                .flatMap(header -> Stream.of(header.split("[,;]"))
                        .map(tag -> Locale.forLanguageTag(tag.strip()))
                        .filter(wish -> isRegionOf(spoken, wish))
                        .findFirst())
                .map(wish -> new Locale.Builder()
                        .setLanguage(spoken.getLanguage())
                        .setRegion(wish.getCountry())
                        .build())
                .orElse(spoken);
    }

    private static boolean isRegionOf(Locale spoken, Locale wish) {
        return wish.getLanguage().equals(spoken.getLanguage())
                && REGIONS.getOrDefault(spoken.getLanguage(), Set.of()).contains(wish.getCountry());
    }

    private static Optional<Locale> lookUp(String ranges) {
        if (ranges.length() > LONGEST || !RANGES.matcher(ranges).matches()) {
            return Optional.empty();
        }
        try {
            return Optional.ofNullable(Locale.lookup(Locale.LanguageRange.parse(ranges), SPOKEN));
        } catch (IllegalArgumentException e) {
            return Optional.empty();
        }
    }
}
