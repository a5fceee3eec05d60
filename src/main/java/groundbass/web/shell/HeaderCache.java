package groundbass.web.shell;

import com.github.benmanes.caffeine.cache.Cache;
import com.github.benmanes.caffeine.cache.Caffeine;
import groundbass.text.Languages;
import groundbass.web.view.Reader;
import java.time.ZoneId;
import java.util.Locale;
import java.util.Optional;

/** Remembers what the few headers that browsers send mean, as working it out costs more than the rest of a kept page. */
final class HeaderCache {
    private static final int MOST = 1_000;
    private static final int LONGEST = 200;

    private record Asked(String header, String otherwise) {}

    private final Cache<Asked, Locale> known =
            Caffeine.newBuilder().maximumSize(MOST).build();

    /** {@code otherwise} is the tag of the language for those who wish none that is spoken. */
    Reader reader(Optional<String> acceptLanguage, String otherwise, ZoneId zone) {
        var asked = new Asked(acceptLanguage.orElse(""), otherwise);
        boolean usual = asked.header().length() <= LONGEST;
        return new Reader(usual ? known.get(asked, HeaderCache::workOut) : workOut(asked), zone);
    }

    private static Locale workOut(Asked asked) {
        var header = Optional.of(asked.header()).filter(text -> !text.isEmpty());
        return Languages.spoken(header, Locale.forLanguageTag(asked.otherwise()));
    }
}
