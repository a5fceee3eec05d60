package groundbass.web.shell;

import groundbass.text.Languages;
import groundbass.web.view.Reader;
import java.time.ZoneId;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;

/** Remembers what the few headers that browsers send mean, as working it out costs more than the rest of a kept page. */
final class Wishes {
    private static final int MOST = 1_000;

    private record Asked(String header, String otherwise) {}

    private final Map<Asked, Locale> known = new ConcurrentHashMap<>();

    /** {@code otherwise} is the tag of the language for those who wish none that is spoken. */
    Reader reader(Optional<String> acceptLanguage, String otherwise, ZoneId zone) {
        var asked = new Asked(acceptLanguage.orElse(""), otherwise);
        var locale = known.get(asked);
        return new Reader(locale == null ? workOut(asked) : locale, zone);
    }

    private Locale workOut(Asked asked) {
        var header = Optional.of(asked.header()).filter(text -> !text.isEmpty());
        var locale = Languages.spoken(header, Locale.forLanguageTag(asked.otherwise()));
        if (known.size() < MOST) {
            known.put(asked, locale);
        }
        return locale;
    }
}
