package groundbass.web.shell;

import groundbass.text.Languages;
import groundbass.web.answer.StoredBytes;
import groundbass.web.answer.Vary;
import groundbass.web.view.Frame;
import groundbass.web.view.Reader;
import groundbass.web.view.Templates;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.nio.charset.StandardCharsets;
import java.util.Locale;

/** Shows pages. The one door from handlers to templates. */
public final class Pages {
    private static final String HTML = "text/html; charset=utf-8";

    private final Templates templates;
    private final SiteSettings settings;

    public Pages(Templates templates, SiteSettings settings) {
        this.templates = templates;
        this.settings = settings;
    }

    /** Answers with {@code templates/NAME.html}. The answer is the reader's own and is not kept anywhere. */
    public void show(Context ctx, String template, Record view) {
        var reader = reader(ctx);
        var frame = new Frame(ctx.path(), place(ctx), settings.demo(), Flash.take(ctx));
        ctx.header("Cache-Control", "no-store");
        send(ctx, reader, templates.render(template, view, frame, reader));
    }

    /** Shows a form again, with what was typed and what is wrong with it (422, RFC 9110 section 15.5.21). */
    public void showAgain(Context ctx, String template, Record view) {
        ctx.status(HttpStatus.UNPROCESSABLE_CONTENT);
        show(ctx, template, view);
    }

    /** A page that is the same for all readers of a language: render it once, keep it, and send it with {@link #send}. */
    public StoredBytes shared(String path, Locale language, String template, Record view) {
        var reader = new Reader(language, settings.zone());
        String html = templates.render(template, view, Frame.shared(path, settings.demo()), reader);
        return StoredBytes.of(html.getBytes(StandardCharsets.UTF_8), HTML);
    }

    /** Sends a kept page that was rendered for the language of {@link #reader}. */
    public void send(Context ctx, StoredBytes page) {
        describe(ctx, reader(ctx));
        page.send(ctx, StoredBytes.ASK_AGAIN);
    }

    /** The language and zone to write this answer in. */
    public Reader reader(Context ctx) {
        String wish = ctx.header("Accept-Language");
        return new Reader(wish == null ? Languages.SPOKEN.get(0) : Languages.forHeader(wish), settings.zone());
    }

    private static void send(Context ctx, Reader reader, String html) {
        describe(ctx, reader);
        ctx.contentType(HTML).result(html);
    }

    private static void describe(Context ctx, Reader reader) {
        ctx.header("Content-Language", reader.language());
        Vary.on(ctx, "Accept-Language");
    }

    private static Frame.Place place(Context ctx) {
        return ctx.path().startsWith("/desk") ? Frame.Place.DESK : Frame.Place.FRONT;
    }
}
