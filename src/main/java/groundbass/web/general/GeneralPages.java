package groundbass.web.general;

import groundbass.catalog.settings.Imprint;
import groundbass.catalog.settings.SiteSettings;
import groundbass.text.Languages;
import groundbass.text.Message;
import groundbass.web.answer.EntityTag;
import groundbass.web.answer.HandOver;
import groundbass.web.shell.Next;
import groundbass.web.shell.PageGroup;
import groundbass.web.shell.Pages;
import groundbass.web.shell.Role;
import groundbass.web.shell.Routes;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.net.URI;
import java.net.URISyntaxException;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Supplier;

/** Privacy, cautions, who teaches: the same for everyone. */
public final class GeneralPages implements PageGroup {
    private static final String NEVER_CHANGES = "";

    private final Pages pages;
    private final Supplier<SiteSettings> settings;

    public GeneralPages(Pages pages, Supplier<SiteSettings> settings) {
        this.pages = pages;
        this.settings = settings;
    }

    @Override
    public void addTo(Routes routes) {
        routes.get(
                "/cautions",
                Role.ANYONE,
                ctx -> pages.showShared(ctx, "general/cautions", NEVER_CHANGES, reader -> new Plain()));
        routes.post("/language", Role.ANYONE, this::speak);
        routes.get("/privacy", Role.ANYONE, ctx -> {
            var chosen = settings.get();
            pages.showShared(
                    ctx, "general/privacy", version(chosen), reader -> Privacy.of(chosen, isFetchedElsewhere()));
        });
        routes.get("/who-teaches", Role.ANYONE, ctx -> {
            var imprint = settings.get().imprint();
            pages.showShared(
                    ctx,
                    "general/who-teaches",
                    version(settings.get()),
                    reader -> new WhoTeaches(imprint, reader.say(Message.of("imprint.rights.subject"))));
        });
    }

    private boolean isFetchedElsewhere() {
        return pages.installation().handOver().filter(HandOver::leadsElsewhere).isPresent();
    }

    /** Nobody needs an account to be spoken to in their language. */
    private void speak(Context ctx) {
        Optional.ofNullable(ctx.formParam("language"))
                .map(Locale::forLanguageTag)
                .filter(Languages.SPOKEN::contains)
                .ifPresent(language -> pages.speak(ctx, language));
        String path = Next.orElse(Optional.ofNullable(ctx.formParam("next")), "/");
        ctx.redirect(path + query(ctx, path), HttpStatus.SEE_OTHER);
    }

    /** What stood behind the path of the page that was read, such as what is looked for; its browser tells it. */
    private static String query(Context ctx, String path) {
        try {
            var from = new URI(Optional.ofNullable(ctx.header("Referer")).orElse(""));
            return from.getRawQuery() != null && path.equals(from.getPath()) ? "?" + from.getRawQuery() : "";
        } catch (URISyntaxException e) {
            return "";
        }
    }

    private static String version(SiteSettings settings) {
        return EntityTag.ofContent(settings.imprint() + " " + settings.accounts())
                .opaque();
    }

    /** A page whose every word is in the bundles. */
    public record Plain() {}

    /**
     * @param idleMonths after how many an account that nobody uses ends, where it does
     * @param elsewhere whether files that are taken home come from another host
     * @param kept, desk keys of paragraphs: what is stored about students, and about who teaches
     */
    public record Privacy(
            Imprint imprint, Optional<Integer> idleMonths, boolean elsewhere, List<String> kept, List<String> desk) {
        static Privacy of(SiteSettings settings, boolean elsewhere) {
            return new Privacy(
                    settings.imprint(),
                    settings.accounts().idleMonths(),
                    elsewhere,
                    keys(StoredThings.OF_STUDENTS),
                    keys(StoredThings.OF_EDUCATORS));
        }

        private static List<String> keys(List<KeptThing> things) {
            return things.stream().map(KeptThing::key).toList();
        }
    }

    /** @param subject of a letter about a right that is hurt */
    public record WhoTeaches(Imprint imprint, String subject) {}
}
