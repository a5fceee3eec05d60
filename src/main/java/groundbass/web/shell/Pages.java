package groundbass.web.shell;

import groundbass.catalog.settings.SiteSettings;
import groundbass.text.Message;
import groundbass.web.answer.CachedResponse;
import groundbass.web.answer.Vary;
import groundbass.web.view.PageFrame;
import groundbass.web.view.Reader;
import groundbass.web.view.Templates;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.Locale;
import java.util.Optional;
import java.util.function.Function;
import java.util.function.Supplier;

/** Shows pages. The one door from handlers to templates. Thread-safe. */
public final class Pages {
    private static final String HTML = "text/html; charset=utf-8";
    private static final Duration A_YEAR = Duration.ofDays(365);

    private final Templates templates;
    private final Installation installation;
    private final Supplier<SiteSettings> chosen;
    private final AccessFilter visitors;
    private final SiteCookie language;
    private final PageCache kept = new PageCache();
    private final HeaderCache headers = new HeaderCache();

    /** @param visitors knows who asks for a page */
    public Pages(Templates templates, Installation installation, Supplier<SiteSettings> chosen, AccessFilter visitors) {
        this.templates = templates;
        this.installation = installation;
        this.chosen = chosen;
        this.visitors = visitors;
        this.language = new SiteCookie("language", installation.secure());
    }

    /** Where and how the program runs. */
    public Installation installation() {
        return installation;
    }

    /** Answers with {@code templates/NAME.html}. The answer is the reader's own and is not kept anywhere. */
    public void show(Context ctx, String template, Record view) {
        var settings = chosen.get();
        var reader = reader(ctx, settings);
        var frame = frame(ctx, settings, AccessFilter.isOwner(ctx), Flash.take(ctx));
        describe(ctx, reader);
        ctx.header("Cache-Control", "no-store");
        ctx.contentType(HTML).result(templates.render(template, view, frame, reader));
    }

    /** Shows a form again, with what was typed and what is wrong with it (422, RFC 9110 section 15.5.21). */
    public void showAgain(Context ctx, String template, Record view) {
        ctx.status(HttpStatus.UNPROCESSABLE_CONTENT);
        show(ctx, template, view);
    }

    /**
     * Answers with a page that is the same for all readers of a language, but for whether they are signed in, and as what:
     * rendered once, kept as bytes, answered with 304 where the reader has it. {@code version} names the content and changes with it (a release's id, say); {@code view}
     * is asked only when the page must be rendered.
     */
    public void showShared(Context ctx, String template, String version, Function<Reader, Record> view) {
        if (Flash.waits(ctx)) {
            // what is to be said to this reader alone
            show(ctx, template, view.apply(reader(ctx)));
            return;
        }
        var settings = chosen.get();
        var reader = reader(ctx, settings);
        var frame = frame(ctx, settings, false, Optional.empty());
        var key = new PageCache.Key(template, version, frame, reader);
        var page = kept.get(key, () -> bytes(templates.render(template, view.apply(reader), frame, reader)));
        describe(ctx, reader);
        page.send(ctx, CachedResponse.ASK_AGAIN);
    }

    private PageFrame frame(Context ctx, SiteSettings settings, boolean owner, Optional<Message> said) {
        return new PageFrame(
                ctx.path(),
                address(settings, "/").toString(),
                place(ctx),
                settings.siteName(),
                installation.demo(),
                visitor(ctx),
                owner,
                said);
    }

    /** Writes all further answers to this reader in that language, whatever the browser asks for. */
    public void speak(Context ctx, Locale locale) {
        language.set(ctx, locale.toLanguageTag(), A_YEAR);
    }

    /** The language and zone to write this answer in. */
    public Reader reader(Context ctx) {
        return reader(ctx, chosen.get());
    }

    /** The full address of a path of ours, for mails, feeds and QR codes. */
    public URI address(String path) {
        return address(chosen.get(), path);
    }

    private URI address(SiteSettings settings, String path) {
        return settings.publicAddress().orElse(installation.publicAddress()).resolve(path);
    }

    private static CachedResponse bytes(String html) {
        return CachedResponse.of(html.getBytes(StandardCharsets.UTF_8), HTML);
    }

    private Reader reader(Context ctx, SiteSettings settings) {
        return headers.reader(
                language.read(ctx),
                Optional.ofNullable(ctx.header("Accept-Language")),
                settings.language(),
                settings.defaultZone());
    }

    private static void describe(Context ctx, Reader reader) {
        ctx.header("Content-Language", reader.language());
        Vary.on(ctx, "Accept-Language");
        Vary.on(ctx, "Cookie");
    }

    private PageFrame.Visitor visitor(Context ctx) {
        var principal = visitors.principal(ctx);
        if (principal.student().isPresent()) {
            return PageFrame.Visitor.STUDENT;
        }
        return principal.desk().isPresent() ? PageFrame.Visitor.EDUCATOR : PageFrame.Visitor.NOBODY;
    }

    private static PageFrame.Place place(Context ctx) {
        boolean desk = ctx.path().equals("/desk") || ctx.path().startsWith("/desk/");
        return desk ? PageFrame.Place.DESK : PageFrame.Place.FRONT;
    }
}
