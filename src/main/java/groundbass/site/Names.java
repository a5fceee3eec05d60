package groundbass.site;

import groundbass.audience.student.LetterHead;
import groundbass.catalog.educator.Educator;
import groundbass.catalog.educator.Educators;
import groundbass.catalog.settings.Settings;
import groundbass.post.Correspondent;
import groundbass.post.EmailAddress;
import groundbass.text.Languages;
import java.net.URI;
import java.util.Locale;
import java.util.Optional;

/** What a site calls itself in letters, as its owner has it at the moment. */
final class Names {
    private final Settings settings;
    private final Educators educators;
    private final URI address;

    /** @param address the site's origin, where its owner has not chosen another */
    Names(Settings settings, Educators educators, URI address) {
        this.settings = settings;
        this.educators = educators;
        this.address = address;
    }

    URI publicAddress() {
        return settings.current().publicAddress().orElse(address);
    }

    LetterHead head() {
        var chosen = settings.current();
        String teacher = Optional.of(chosen.imprint().name())
                .filter(name -> !name.isEmpty())
                .or(() -> educators.owner().map(Educator::name))
                .orElse(chosen.siteName());
        return new LetterHead(chosen.siteName(), teacher, publicAddress());
    }

    /** Answers go to who teaches, where they have said so. */
    Correspondent correspondent() {
        var chosen = settings.current();
        return new Correspondent(
                chosen.siteName(), EmailAddress.read(chosen.imprint().email()));
    }

    /** In which the desk is written to. */
    Locale language() {
        return Languages.spoken(Locale.forLanguageTag(settings.current().language()));
    }
}
