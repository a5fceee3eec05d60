package groundbass.web.general;

import groundbass.text.Languages;
import groundbass.web.answer.StoredBytes;
import groundbass.web.shell.PageGroup;
import groundbass.web.shell.Pages;
import groundbass.web.shell.Role;
import groundbass.web.shell.Routes;
import io.javalin.http.Handler;
import java.util.Locale;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;

/** Privacy and cautions: the same for everyone, so rendered once per language. */
public final class GeneralPages implements PageGroup {
    private final Pages pages;

    public GeneralPages(Pages pages) {
        this.pages = pages;
    }

    @Override
    public void addTo(Routes routes) {
        routes.get("/privacy", Role.ANYONE, kept("/privacy", "general/privacy"));
        routes.get("/cautions", Role.ANYONE, kept("/cautions", "general/cautions"));
    }

    private Handler kept(String path, String template) {
        Map<Locale, StoredBytes> byLanguage = Languages.SPOKEN.stream()
                .collect(Collectors.toUnmodifiableMap(
                        Function.identity(), language -> pages.shared(path, language, template, new Plain())));
        return ctx -> pages.send(ctx, byLanguage.get(pages.reader(ctx).locale()));
    }

    /** A page whose every word is in the bundles. */
    public record Plain() {}
}
