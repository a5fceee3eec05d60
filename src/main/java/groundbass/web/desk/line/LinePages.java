package groundbass.web.desk.line;

import groundbass.effort.Busy;
import groundbass.lesson.Sheets;
import groundbass.linetext.LineWords;
import groundbass.linetext.edit.LineEdit;
import groundbass.linetext.source.Splice;
import groundbass.text.Messages;
import groundbass.web.desk.access.DeskContext;
import groundbass.web.desk.access.DeskJson;
import groundbass.web.desk.access.FormParameters;
import groundbass.web.shell.PageGroup;
import groundbass.web.shell.Role;
import groundbass.web.shell.Routes;
import io.javalin.http.BadRequestResponse;
import io.javalin.http.Context;
import java.io.IOException;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** What the script on the page of an episode asks about a line while it is typed. Nothing is saved here. */
public final class LinePages implements PageGroup {
    private static final Logger log = LoggerFactory.getLogger(LinePages.class);
    private static final String PATH = DeskContext.EPISODE;
    private static final Set<String> PREFIXES =
            Set.of("main", "e0", "e1", "e2", "e3", "e4", "e5", "e6", "e7", "e8", "e9");

    /** In staff spaces. */
    private static final int NARROWEST = 36;

    private static final int WIDEST = 160;
    private static final int MOST_PITCHES = 6;
    private static final int MOST_SHOWN = 1_000;

    private final DeskContext desk;
    private final LineSound sound;

    public LinePages(DeskContext desk, LineSound sound) {
        this.desk = desk;
        this.sound = sound;
    }

    /** Changes of a text, from its start to its end. */
    record Answer(List<Splice> splices) {}

    @Override
    public void addTo(Routes routes) {
        routes.get("/desk/line-words", Role.EDUCATOR, ctx -> DeskJson.send(ctx, LineWords.ALL));
        routes.post(PATH + "/live", Role.EDUCATOR, this::live);
        routes.post(PATH + "/edit", Role.EDUCATOR, this::edit);
        routes.post(PATH + "/listen", Role.EDUCATOR, this::listen);
        routes.post(PATH + "/places", Role.EDUCATOR, this::places);
        routes.post(PATH + "/ways", Role.EDUCATOR, this::ways);
    }

    private void live(Context ctx) {
        var style = desk.style(desk.episode(ctx));
        int width = Math.max(NARROWEST, Math.min(WIDEST, FormParameters.number(ctx, "width", 78)));
        String prefix = FormParameters.text(ctx, "prefix");
        if (!PREFIXES.contains(prefix)) {
            throw new BadRequestResponse();
        }
        var messages = Messages.of(Locale.forLanguageTag(FormParameters.text(ctx, "language")));
        var sheets = new Sheets(messages).with(style);
        var reader = Messages.of(desk.pages().reader(ctx).locale());
        boolean told = FormParameters.ticked(ctx, "walk");
        var has = words(ctx, "has").limit(MOST_SHOWN).collect(Collectors.toSet());
        var asked = new LineDrawing.Asked(text(ctx), width, "sheet-" + prefix + "-", told, has);
        if (FormParameters.ticked(ctx, "apart")) {
            sendApart(ctx, () -> LineDrawing.of(asked, sheets, reader));
        } else {
            answer(ctx, () -> LineDrawing.of(asked, sheets, reader).whole());
        }
    }

    /** The drawing as soon as it is there, then what is to be said of it. Nobody works while a piece is on its way. */
    private void sendApart(Context ctx, Supplier<LineDrawing.Drawn> work) {
        var who = desk.educator(ctx);
        var drawn = desk.work(who, work);
        try (var pieces = LivePieces.begin(ctx)) {
            pieces.send(drawn.line());
            pieces.send(new LiveLine.Remarks(desk.work(who, drawn.remarks())));
        } catch (IOException | Busy e) {
            log.debug("broken off, and asked again by the page", e);
        }
    }

    private void edit(Context ctx) {
        desk.episode(ctx);
        var edit = Edits.read(ctx).orElseThrow(BadRequestResponse::new);
        String text = text(ctx);
        answer(ctx, () -> new Answer(LineEdit.of(text, edit)));
    }

    private void listen(Context ctx) {
        desk.episode(ctx);
        var who = desk.educator(ctx);
        desk.work(who, () -> sound.of(ctx, who, text(ctx))).send(ctx);
    }

    private void answer(Context ctx, Supplier<Record> work) {
        DeskJson.send(ctx, desk.work(desk.educator(ctx), work));
    }

    private void places(Context ctx) {
        desk.episode(ctx);
        answer(ctx, () -> placesOf(ctx));
    }

    private static LineFingering.PlacesAnswer placesOf(Context ctx) {
        var fingering = new LineFingering(text(ctx));
        var pitches = words(ctx, "pitches")
                .filter(word -> word.matches("[0-9]{1,3}"))
                .map(Integer::valueOf)
                .limit(MOST_PITCHES)
                .toList();
        var before =
                words(ctx, "before").limit(MOST_PITCHES).map(fingering::read).toList();
        return fingering.places(pitches, before);
    }

    private void ways(Context ctx) {
        desk.episode(ctx);
        var reader = Messages.of(desk.pages().reader(ctx).locale());
        answer(ctx, () -> new LineFingering(text(ctx)).ways(FormParameters.number(ctx, "bar", -1), reader));
    }

    private static Stream<String> words(Context ctx, String name) {
        return Stream.of(FormParameters.text(ctx, name).strip().split(" +")).filter(word -> !word.isEmpty());
    }

    /** With the line ends that a page's script counts by. */
    static String text(Context ctx) {
        return FormParameters.text(ctx, "text").replace("\r\n", "\n");
    }
}
