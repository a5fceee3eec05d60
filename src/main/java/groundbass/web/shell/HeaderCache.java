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

    private record Asked(String chosen, String header, String otherwise) {}

    private record Wish(Locale spoken, Locale written) {}

    private final Cache<Asked, Wish> known =
            Caffeine.newBuilder().maximumSize(MOST).build();

    /**
     * @param chosen the tag of the language that the reader has chosen here, which goes before the header
     * @param otherwise the tag of the language for those who wish none that is spoken
     */
    Reader reader(Optional<String> chosen, Optional<String> acceptLanguage, String otherwise, ZoneId zone) {
        var asked = new Asked(chosen.orElse(""), acceptLanguage.orElse(""), otherwise);
        boolean usual = asked.chosen().length() + asked.header().length() <= LONGEST;
        var found = usual ? known.get(asked, HeaderCache::workOut) : workOut(asked);
        return new Reader(found.spoken(), zone, found.written());
    }

    private static Wish workOut(Asked asked) {
        var header = given(asked.header());
        var spoken = Languages.spoken(given(asked.chosen()).or(() -> header), Locale.forLanguageTag(asked.otherwise()));
        return new Wish(spoken, Languages.written(header, spoken));
    }

    private static Optional<String> given(String text) {
        return Optional.of(text).filter(any -> !any.isEmpty());
    }
}
