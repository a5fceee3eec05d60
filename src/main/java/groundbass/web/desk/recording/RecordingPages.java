package groundbass.web.desk.recording;

import com.fasterxml.jackson.databind.ObjectMapper;
import groundbass.catalog.episode.Draft;
import groundbass.catalog.episode.DraftSave;
import groundbass.catalog.episode.EpisodeService;
import groundbass.catalog.upload.Heard;
import groundbass.catalog.upload.Recordings;
import groundbass.catalog.upload.Uploads;
import groundbass.document.BackingTrack;
import groundbass.document.BarMap;
import groundbass.document.UploadId;
import groundbass.lesson.BarMapping;
import groundbass.listening.Hearing;
import groundbass.listening.Loudness;
import groundbass.web.answer.EntityTag;
import groundbass.web.answer.MediaTypes;
import groundbass.web.desk.access.DeskContext;
import groundbass.web.desk.access.DeskJson;
import groundbass.web.shell.PageGroup;
import groundbass.web.shell.Role;
import groundbass.web.shell.Routes;
import io.javalin.http.BadRequestResponse;
import io.javalin.http.ConflictResponse;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import io.javalin.http.NotFoundResponse;
import java.io.IOException;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * The page on which the bars of an uploaded recording are set, and what its script asks for: how the recording sounds,
 * its wave, and when its bars begin.
 */
public final class RecordingPages implements PageGroup {
    private static final String PATH = OwnUploads.PATH;
    private static final int LARGEST_MAP = 400_000;
    private static final ObjectMapper JSON = new ObjectMapper();

    private final DeskContext desk;
    private final EpisodeService writing;
    private final OwnUploads uploads;
    private final Recordings recordings;

    /** Stands for a loudness that is not there: of silence, or before anybody has listened. */
    private static final double NO_SOUND = -200;

    /**
     * @param state {@code waiting}, {@code broken} or {@code ready}
     * @param integrated LUFS; {@link #NO_SOUND} of silence and where it is not ready
     * @param truePeak dBTP, likewise
     * @param peaks from 0 to 1, {@code stepsASecond} of them a second
     */
    record Sound(
            String state,
            String format,
            double seconds,
            int sampleRate,
            int channels,
            double integrated,
            double truePeak,
            int stepsASecond,
            List<Float> peaks) {}

    /** @param kept whether the educator has saved it; else it was found just now */
    record Bars(boolean kept, List<BarMap.Start> bars, double end) {}

    public RecordingPages(DeskContext desk, EpisodeService writing, Uploads uploads, Recordings recordings) {
        this.desk = desk;
        this.writing = writing;
        this.uploads = new OwnUploads(desk, uploads);
        this.recordings = recordings;
    }

    @Override
    public void addTo(Routes routes) {
        routes.get(PATH, Role.EDUCATOR, this::show);
        routes.get(PATH + "/recording", Role.EDUCATOR, uploads::send);
        routes.get(PATH + "/sound", Role.EDUCATOR, this::sound);
        routes.get(PATH + "/wave.svg", Role.EDUCATOR, this::wave);
        routes.get(PATH + "/bars", Role.EDUCATOR, this::bars);
        routes.put(PATH + "/bars", Role.EDUCATOR, this::keepBars);
    }

    private void show(Context ctx) {
        var upload = uploads.named(ctx);
        var document = draft(ctx).document();
        var heard = recordings.heard(upload.id());
        desk.pages().show(ctx, "desk/recording", RecordingView.of(desk.episode(ctx), document, upload, heard));
    }

    private void sound(Context ctx) {
        var upload = uploads.named(ctx);
        var facts = upload.facts();
        var heard = recordings.heard(upload.id());
        var ready = heard instanceof Heard.Ready is ? Optional.of(is.loudness()) : Optional.<Loudness>empty();
        DeskJson.send(
                ctx,
                new Sound(
                        state(heard),
                        facts.format().name(),
                        facts.duration().toMillis() / 1000.0,
                        facts.sampleRate(),
                        facts.channels(),
                        ready.map(Loudness::integrated).filter(Double::isFinite).orElse(NO_SOUND),
                        ready.map(Loudness::truePeak).filter(Double::isFinite).orElse(NO_SOUND),
                        Hearing.STEPS_A_SECOND,
                        recordings.hearing(upload.id()).map(Hearing::peaks).orElse(List.of())));
    }

    static String state(Heard heard) {
        return heard instanceof Heard.Ready ? "ready" : heard instanceof Heard.Broken ? "broken" : "waiting";
    }

    private void wave(Context ctx) {
        var hearing = recordings.hearing(uploads.named(ctx).id()).orElseThrow(NotFoundResponse::new);
        ctx.header("Cache-Control", "private, max-age=86400")
                .contentType(MediaTypes.encoded("image/svg+xml"))
                .result(WaveDrawing.of(hearing.peaks()));
    }

    /** What is kept; with {@code find}, or where nothing is kept, what is found; with {@code rounds} in so many rounds. */
    private void bars(Context ctx) {
        var upload = uploads.named(ctx);
        var draft = draft(ctx);
        var kept = track(draft, upload.id()).map(BackingTrack::map).orElse(BarMap.NONE);
        ctx.header("ETag", tag(kept).toString());
        if (!kept.bars().isEmpty() && ctx.queryParam("find") == null) {
            DeskJson.send(ctx, new Bars(true, kept.bars(), kept.end()));
            return;
        }
        var hearing = recordings.hearing(upload.id()).orElseThrow(NotFoundResponse::new);
        var found = BarMapping.find(draft.document(), hearing, rounds(ctx)).orElse(BarMap.NONE);
        DeskJson.send(ctx, new Bars(false, found.bars(), found.end()));
    }

    private static OptionalInt rounds(Context ctx) {
        String typed = Optional.ofNullable(ctx.queryParam("rounds")).orElse("");
        return typed.matches("[0-9]{1,2}") ? OptionalInt.of(Integer.parseInt(typed)) : OptionalInt.empty();
    }

    /** With {@code If-Match}, only where what is kept is what that tag names; else 412 and the tag of what is kept. */
    private void keepBars(Context ctx) {
        var upload = uploads.named(ctx);
        var map = read(ctx);
        if (!map.runsForward(upload.facts().duration().toMillis() / 1000.0)) {
            throw new BadRequestResponse();
        }
        var draft = draft(ctx);
        var tracks = draft.document().backingTracks().stream()
                .map(track -> track.upload().equals(upload.id()) ? track.withMap(map) : track)
                .toList();
        var before =
                track(draft, upload.id()).orElseThrow(NotFoundResponse::new).map();
        if (changedSince(ctx, before)) {
            ctx.header("ETag", tag(before).toString()).status(HttpStatus.PRECONDITION_FAILED);
            return;
        }
        var saved = writing.saveDraft(
                desk.educator(ctx),
                desk.episode(ctx).id(),
                draft.version(),
                draft.document().edit().backingTracks(tracks).done());
        if (saved.result().filter(DraftSave.Saved.class::isInstance).isEmpty()) {
            throw new ConflictResponse();
        }
        ctx.header("ETag", tag(map).toString()).status(HttpStatus.NO_CONTENT);
    }

    private static boolean changedSince(Context ctx, BarMap kept) {
        var known = Optional.ofNullable(ctx.header("If-Match"));
        return known.isPresent() && !tag(kept).namedIn(known);
    }

    private static BarMap read(Context ctx) {
        if (ctx.contentLength() > LARGEST_MAP) {
            throw new BadRequestResponse();
        }
        try {
            var map = JSON.readValue(ctx.bodyAsBytes(), BarMap.class);
            return map == null ? BarMap.NONE : map;
        } catch (IOException | RuntimeException e) {
            throw new BadRequestResponse();
        }
    }

    private Draft draft(Context ctx) {
        return writing.draft(desk.educator(ctx), desk.episode(ctx).id()).orElseThrow(NotFoundResponse::new);
    }

    /** Names what is kept, so that a window learns that another one has saved since (RFC 9110 section 13.1.1). */
    private static EntityTag tag(BarMap kept) {
        return EntityTag.ofContent(DeskJson.write(kept));
    }

    private static Optional<BackingTrack> track(Draft draft, UploadId upload) {
        return draft.document().backingTracks().stream()
                .filter(track -> track.upload().equals(upload))
                .findFirst();
    }
}
