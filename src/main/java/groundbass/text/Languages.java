package groundbass.text;

import java.util.List;
import java.util.Locale;

/** The languages Groundbass speaks, and which of them a reader gets. */
public final class Languages {
    /** The first is spoken to whoever asks for none of them. */
    public static final List<Locale> SPOKEN = List.of(Locale.ENGLISH, Locale.GERMAN);

    private Languages() {}

    /**
     * The best spoken language for an {@code Accept-Language} header (RFC 9110 section 12.5.4, matched by the lookup of
     * RFC 4647 section 3.4). Anything that is not such a header counts as no wish at all.
     */
    public static Locale forHeader(String acceptLanguage) {
        try {
            var wishes = Locale.LanguageRange.parse(acceptLanguage);
            return orFirst(Locale.lookup(wishes, SPOKEN));
        } catch (IllegalArgumentException e) {
            return SPOKEN.get(0);
        }
    }

    /** The spoken language of a tag such as {@code de-AT}, else the first. */
    public static Locale forTag(String tag) {
        return forHeader(tag);
    }

    private static Locale orFirst(Locale found) {
        return found == null ? SPOKEN.get(0) : found;
    }
}
