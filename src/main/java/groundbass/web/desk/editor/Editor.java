package groundbass.web.desk.editor;

import groundbass.catalog.episode.Draft;
import groundbass.catalog.episode.Episode;
import groundbass.catalog.episode.EpisodeService;
import groundbass.catalog.upload.Recordings;
import groundbass.catalog.upload.Upload;
import groundbass.catalog.upload.Uploads;
import groundbass.document.BackingTrack;
import groundbass.document.UploadId;
import groundbass.effort.Busy;
import groundbass.form.FieldProblem;
import groundbass.text.Message;
import groundbass.web.desk.access.DeskContext;
import groundbass.web.desk.calendar.PublishingViews;
import groundbass.web.desk.calendar.ReleaseCalendar;
import groundbass.web.desk.editor.EditorView.About;
import groundbass.web.desk.editor.EditorView.Difference;
import groundbass.web.desk.recording.TrackRow;
import groundbass.web.view.FieldProblems;
import groundbass.web.view.Reader;
import groundbass.web.view.WaitView;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.time.Clock;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** Shows the page on which an episode is written, in each of the situations it can be in. */
public final class Editor {
    private static final Logger log = LoggerFactory.getLogger(Editor.class);
    private static final String TEMPLATE = "desk/episode";

    private final DeskContext desk;
    private final EpisodeService writing;
    private final Uploads uploads;
    private final Recordings recordings;
    private final PublishingViews publishing;
    private final Clock clock;

    public Editor(
            DeskContext desk,
            EpisodeService writing,
            Uploads uploads,
            Recordings recordings,
            PublishingViews publishing,
            Clock clock) {
        this.desk = desk;
        this.writing = writing;
        this.uploads = uploads;
        this.recordings = recordings;
        this.publishing = publishing;
        this.clock = clock;
    }

    /** The draft as it is saved. */
    void show(Context ctx, Episode episode) {
        desk.pages().show(ctx, TEMPLATE, stored(ctx, episode, FieldProblems.NONE));
    }

    /** The draft as it is saved, with what went wrong beside it. */
    void showAgain(Context ctx, Episode episode, List<FieldProblem> problems) {
        desk.pages().showAgain(ctx, TEMPLATE, stored(ctx, episode, EditorProblems.of(problems)));
    }

    private EditorView stored(Context ctx, Episode episode, FieldProblems problems) {
        var draft = writing.draft(desk.educator(ctx), episode.id()).orElseThrow();
        String zone = desk.seriesOf(episode).zone().getId();
        var form = EpisodeForm.of(draft, episode.number(), uploads.of(episode.id()), zone);
        return view(ctx, episode, form, draft.savedAt(), problems);
    }

    /** What was typed and is saved, with what keeps it from going on. */
    void showAgain(Context ctx, Episode episode, EpisodeForm form, Instant savedAt, List<FieldProblem> problems) {
        var view = view(ctx, episode, form, Optional.of(savedAt), EditorProblems.of(problems));
        desk.pages().showAgain(ctx, TEMPLATE, view);
    }

    /** Both texts: the one typed here, and what another window saved. Saving again takes the one typed here. */
    void showConflict(Context ctx, Episode episode, EpisodeForm form, Draft stored, List<Difference> others) {
        var again = form.withBase(stored.version());
        var view =
                view(ctx, episode, again, stored.savedAt(), FieldProblems.NONE).with(others);
        ctx.status(HttpStatus.CONFLICT);
        desk.pages().show(ctx, TEMPLATE, view);
    }

    /** What was typed by somebody whose sign-in has run out, with the fields to sign in again. Nothing stored is shown. */
    void askToSignIn(Context ctx, EpisodeForm form, String email, FieldProblems problems) {
        var preview = Preview.undrawn(form, Message.of("desk.live.signed-out"));
        var tracks = form.tracks().stream()
                .map(track -> TrackRow.of(track, Optional.empty()))
                .toList();
        ctx.status(HttpStatus.UNAUTHORIZED);
        desk.pages()
                .show(
                        ctx,
                        TEMPLATE,
                        new EditorView(
                                DeskContext.path(ctx),
                                form,
                                problems,
                                preview,
                                Optional.empty(),
                                tracks,
                                List.of(),
                                email));
    }

    /** The part that follows the typing; {@code beside} for what is no line. */
    void preview(Context ctx, Episode episode, EpisodeForm form, boolean beside, boolean narrow) {
        var reader = desk.pages().reader(ctx);
        var style = desk.style(episode);
        var preview = desk.work(
                desk.educator(ctx),
                () -> beside
                        ? Preview.beside(form, style, reader, clock.instant())
                        : Preview.of(form, narrow, style, reader, clock.instant()));
        desk.pages()
                .show(
                        ctx,
                        "desk/preview",
                        new PreviewView(preview, narrow, form.making().language()));
    }

    /** The part that changes by itself. */
    void calendar(Context ctx, Episode episode) {
        desk.pages().show(ctx, "desk/calendar", new CalendarView(calendarOf(ctx, episode)));
    }

    /** The row of a recording that just came in. */
    void track(Context ctx, TrackRow track) {
        desk.pages()
                .show(
                        ctx,
                        "desk/track",
                        new TrackView(track, List.of(BackingTrack.Kind.values()), DeskContext.path(ctx)));
    }

    private EditorView view(
            Context ctx, Episode episode, EpisodeForm form, Optional<Instant> savedAt, FieldProblems problems) {
        var reader = desk.pages().reader(ctx);
        var series = desk.seriesOf(episode);
        var about = new About(
                series.title(),
                episode.number(),
                episode.isPublished(),
                savedAt,
                calendarOf(ctx, episode),
                publishing.preflight(series.owner(), episode));
        var preview = drawn(episode, form, reader);
        return new EditorView(
                about.calendar().path(),
                form,
                problems,
                preview,
                Optional.of(about),
                tracks(episode, form),
                List.of(),
                "");
    }

    /** Whatever the machine has to do, the text itself can always be opened and saved. */
    private Preview drawn(Episode episode, EpisodeForm form, Reader reader) {
        try {
            return desk.work(
                    desk.seriesOf(episode).owner(),
                    () -> Preview.of(form, false, desk.style(episode), reader, clock.instant()));
        } catch (Busy busy) {
            String wait = reader.say(WaitView.words(busy.howLong().toSeconds() + 1));
            return Preview.undrawn(form, Message.of("desk.live.busy", wait));
        } catch (RuntimeException e) {
            log.error("what was typed for episode {} cannot be shown", episode.id(), e);
            return Preview.undrawn(form, Message.of("desk.live.fault"));
        }
    }

    private ReleaseCalendar calendarOf(Context ctx, Episode episode) {
        var series = desk.seriesOf(episode);
        return publishing.calendar(series.owner(), episode, series, desk.pages().reader(ctx));
    }

    private List<TrackRow> tracks(Episode episode, EpisodeForm form) {
        Map<UploadId, Upload> known =
                uploads.of(episode.id()).stream().collect(Collectors.toMap(Upload::id, Function.identity()));
        return form.tracks().stream()
                .map(track -> TrackRow.of(
                        track, Optional.ofNullable(known.get(track.upload())), recordings.heard(track.upload())))
                .toList();
    }

    /** What the script puts into the page. */
    public record PreviewView(Preview preview, boolean narrow, String language) {}

    /** What the script puts into the page. */
    public record TrackView(TrackRow track, List<BackingTrack.Kind> kinds, String path) {}

    /** What the script puts into the page. */
    public record CalendarView(ReleaseCalendar calendar) {}
}
