package groundbass.web.desk.takeout;

import groundbass.catalog.educator.EducatorId;
import groundbass.catalog.episode.Episode;
import groundbass.catalog.episode.EpisodeId;
import groundbass.catalog.episode.EpisodeService;
import groundbass.catalog.episode.Episodes;
import groundbass.catalog.series.Deed;
import groundbass.catalog.upload.Picture;
import groundbass.catalog.upload.TakingOut;
import groundbass.catalog.upload.TakingOut.Whither;
import groundbass.catalog.upload.Upload;
import groundbass.catalog.upload.Uploads;
import groundbass.document.EpisodeDocument;
import groundbass.document.PictureId;
import groundbass.document.UploadId;
import groundbass.form.Outcome;
import groundbass.identity.Sha256;
import groundbass.lesson.NotePictures;
import groundbass.release.Release;
import groundbass.release.Releases;
import groundbass.web.desk.access.DeskContext;
import groundbass.web.desk.room.Room;
import groundbass.web.shell.Flash;
import groundbass.web.shell.PageGroup;
import groundbass.web.shell.Role;
import groundbass.web.shell.Routes;
import io.javalin.http.Context;
import io.javalin.http.Handler;
import io.javalin.http.HttpStatus;
import io.javalin.http.NotFoundResponse;
import java.time.Clock;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** Takes recordings and pictures out of a lesson, once it is told what they still stand in, and puts them back. */
public final class TakeOutPages implements PageGroup {
    private static final String PICTURE = DeskContext.EPISODE + "/pictures/{picture}";
    private static final String TRACK = DeskContext.EPISODE + "/tracks/{recording}";

    private final DeskContext desk;
    private final Episodes episodes;
    private final EpisodeService writing;
    private final Uploads uploads;
    private final TakingOut takingOut;
    private final Releases releases;
    private final Clock clock;

    public TakeOutPages(
            DeskContext desk,
            Episodes episodes,
            EpisodeService writing,
            Uploads uploads,
            TakingOut takingOut,
            Releases releases,
            Clock clock) {
        this.desk = desk;
        this.episodes = episodes;
        this.writing = writing;
        this.uploads = uploads;
        this.takingOut = takingOut;
        this.releases = releases;
        this.clock = clock;
    }

    @Override
    public void addTo(Routes routes) {
        add(
                routes,
                PICTURE,
                this::askPicture,
                new Act(
                        Room.NOTES,
                        "picture",
                        (who, lesson, ctx) -> takingOut.picture(who, lesson, picture(ctx)),
                        (who, lesson, ctx) -> takingOut.putBackPicture(who, lesson, picture(ctx))));
        add(
                routes,
                TRACK,
                this::askTrack,
                new Act(
                        Room.SOUND,
                        "track",
                        (who, lesson, ctx) -> takingOut.recording(who, lesson, track(ctx)),
                        (who, lesson, ctx) -> takingOut.putBackRecording(who, lesson, track(ctx))));
    }

    /** Something that is done to what an address names. */
    private interface Deeds<T> {
        Outcome<T> done(EducatorId who, EpisodeId lesson, Context ctx);
    }

    /** What can be done to one kind of what was sent. @param word as the sentences are called that tell of it */
    private record Act(Room room, String word, Deeds<Whither> out, Deeds<EpisodeId> back) {}

    private void add(Routes routes, String path, Handler ask, Act act) {
        routes.get(path + "/take-out", Role.EDUCATOR, ask);
        routes.post(path + "/take-out", Role.EDUCATOR, ctx -> {
            boolean aside = done(ctx, act.out()) == Whither.ASIDE;
            lead(ctx, act.room(), aside ? act.word() : act.word() + ".elsewhere");
        });
        routes.post(path + "/put-back", Role.EDUCATOR, ctx -> {
            done(ctx, act.back());
            lead(ctx, act.room(), act.word() + ".back");
        });
    }

    private <T> T done(Context ctx, Deeds<T> deed) {
        var lesson = desk.episode(ctx).id();
        return deed.done(desk.educator(ctx), lesson, ctx).result().orElseThrow(NotFoundResponse::new);
    }

    private static PictureId picture(Context ctx) {
        return PictureId.parse(ctx.pathParam("picture")).orElseThrow(NotFoundResponse::new);
    }

    private static UploadId track(Context ctx) {
        return UploadId.parse(ctx.pathParam("recording")).orElseThrow(NotFoundResponse::new);
    }

    private static void lead(Context ctx, Room room, String said) {
        Flash.say(ctx, "desk.out." + said);
        ctx.redirect(DeskContext.path(ctx) + room.way(), HttpStatus.SEE_OTHER);
    }

    private void askPicture(Context ctx) {
        var lesson = desk.episode(ctx);
        var picture = uploads.pictures()
                .find(picture(ctx))
                .filter(one -> one.episode().equals(lesson.id()))
                .orElseThrow(NotFoundResponse::new);
        boolean shown = document(ctx, lesson).notes().contains(NotePictures.address(picture.id()));
        ask(ctx, lesson, Asked.of(picture, shown), takingOut.alsoIn(picture.id(), lesson.id()));
    }

    private void askTrack(Context ctx) {
        var lesson = desk.episode(ctx);
        var upload = uploads.find(track(ctx))
                .filter(one -> one.episode().equals(lesson.id()))
                .orElseThrow(NotFoundResponse::new);
        var title = document(ctx, lesson).backingTracks().stream()
                .filter(track -> track.upload().equals(upload.id()))
                .map(track -> track.title())
                .findFirst();
        ask(ctx, lesson, Asked.of(upload, title), takingOut.alsoIn(upload.id(), lesson.id()));
    }

    private EpisodeDocument document(Context ctx, Episode lesson) {
        return writing.draft(desk.educator(ctx), lesson.id())
                .orElseThrow(NotFoundResponse::new)
                .document();
    }

    private void ask(Context ctx, Episode lesson, Asked asked, List<EpisodeId> alsoIn) {
        var who = desk.educator(ctx);
        var view = new View(
                lesson.title(),
                DeskContext.path(lesson) + asked.room().way(),
                DeskContext.path(lesson) + asked.way(),
                asked,
                released(lesson, asked.content()),
                !alsoIn.isEmpty(),
                titles(who, alsoIn),
                clock.instant().plus(TakingOut.KEPT));
        desk.pages().show(ctx, "desk/take-out", view);
    }

    /** The numbers of its releases that are out, or were, and have it. */
    private String released(Episode lesson, Sha256 content) {
        return releases.files().needing(content).stream()
                .filter(release -> release.episode().equals(lesson.id()))
                .filter(release -> release.publishedAt().isPresent())
                .map(Release::spec)
                .map(spec -> spec.release())
                .sorted()
                .map(String::valueOf)
                .collect(Collectors.joining(", "));
    }

    /** Of those that they can open. */
    private String titles(EducatorId who, List<EpisodeId> lessons) {
        return lessons.stream()
                .flatMap(id -> episodes.open(who, Deed.WRITE, id).stream())
                .map(Episode::title)
                .collect(Collectors.joining(", "));
    }

    /**
     * What is to be taken out.
     *
     * @param kind {@code picture} or {@code track}
     * @param way to it, from its lesson
     * @param shown whether there is a picture to be seen at {@code way}
     * @param used whether what is being typed has it
     */
    public record Asked(String kind, Room room, String way, String name, boolean shown, boolean used, Sha256 content) {
        static Asked of(Picture picture, boolean used) {
            return new Asked(
                    "picture",
                    Room.NOTES,
                    "/pictures/" + picture.id(),
                    picture.words(),
                    true,
                    used,
                    picture.blob().sha256());
        }

        /** @param title in what is being typed, where that has it */
        static Asked of(Upload upload, Optional<String> title) {
            String name = Stream.concat(title.stream(), Stream.of(upload.originalName()))
                    .distinct()
                    .collect(Collectors.joining(" · "));
            return new Asked(
                    "track",
                    Room.SOUND,
                    "/tracks/" + upload.id(),
                    name,
                    false,
                    title.isPresent(),
                    upload.blob().sha256());
        }
    }

    /**
     * What the page says before it is done.
     *
     * @param back the way to the room
     * @param here the way to what is asked about
     * @param released numbers of releases that have it, as text; may be empty
     * @param elsewhere whether another lesson uses it
     * @param titles of those that the reader knows; may be empty
     * @param until when it can be put back
     */
    public record View(
            String lesson,
            String back,
            String here,
            Asked asked,
            String released,
            boolean elsewhere,
            String titles,
            Instant until) {}
}
