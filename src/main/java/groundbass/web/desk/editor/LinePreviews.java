package groundbass.web.desk.editor;

import groundbass.catalog.episode.Episode;
import groundbass.document.EpisodeDocument;
import groundbass.effort.Busy;
import groundbass.lesson.Sheets;
import groundbass.text.Message;
import groundbass.text.Messages;
import groundbass.web.desk.access.DeskContext;
import groundbass.web.desk.line.LinePreview;
import groundbass.web.desk.line.SheetRoom;
import groundbass.web.view.WaitView;
import io.javalin.http.Context;
import java.util.Locale;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** Draws and tells a line for its room, where no script does it. Whatever the machine has to do, the text can be opened. */
final class LinePreviews {
    private static final Logger log = LoggerFactory.getLogger(LinePreviews.class);

    /** In staff spaces. */
    private static final double WIDTH = 78;

    private final DeskContext desk;

    LinePreviews(DeskContext desk) {
        this.desk = desk;
    }

    LinePreview of(Context ctx, Episode episode, EpisodeDocument document, String field, String text) {
        var reader = desk.pages().reader(ctx);
        try {
            return desk.work(ctx, episode, () -> draw(episode, document, field, text, Messages.of(reader.locale())));
        } catch (Busy busy) {
            String wait = reader.say(WaitView.words(busy.howLong().toSeconds() + 1));
            return LinePreview.undrawn(field, Message.of("desk.live.busy", wait));
        } catch (RuntimeException e) {
            log.error("what was typed for episode {} cannot be shown", episode.id(), e);
            return LinePreview.undrawn(field, Message.of("desk.live.fault"));
        }
    }

    private LinePreview draw(Episode episode, EpisodeDocument document, String field, String text, Messages words) {
        var language = Locale.forLanguageTag(document.settings().language());
        var sheets = new Sheets(Messages.of(language)).with(desk.style(episode));
        return LinePreview.of(field, text, WIDTH, sheets, new SheetRoom(), words);
    }
}
