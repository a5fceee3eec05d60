package groundbass.web.program;

import groundbass.catalog.educator.ProgramScope;
import groundbass.catalog.episode.Beginnings;
import groundbass.catalog.episode.EpisodeService;
import groundbass.catalog.series.Deed;
import groundbass.catalog.series.Series;
import groundbass.document.Level;
import groundbass.web.shell.PageGroup;
import groundbass.web.shell.Role;
import groundbass.web.shell.Routes;
import io.javalin.http.HttpStatus;
import java.io.IOException;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;

/** The series of an educator and those shared with them, with their lessons, and the beginning of a lesson. */
final class SeriesOperations implements PageGroup {
    private static final String PATH = Door.ROOT + "/series";
    private static final String ONE = PATH + "/{series}";

    private final Door door;
    private final Once once;
    private final Addressed addressed;
    private final EpisodeService writing;
    private final Beginnings beginnings;
    private final LessonView lessons;

    SeriesOperations(
            Door door,
            Once once,
            Addressed addressed,
            EpisodeService writing,
            Beginnings beginnings,
            LessonView lessons) {
        this.door = door;
        this.once = once;
        this.addressed = addressed;
        this.writing = writing;
        this.beginnings = beginnings;
        this.lessons = lessons;
    }

    @Override
    public void addTo(Routes routes) {
        routes.get(PATH, Role.EXEMPT, door.open(ProgramScope.READ, this::list));
        routes.get(ONE, Role.EXEMPT, door.open(ProgramScope.READ, this::show));
        routes.get(ONE + "/lessons", Role.EXEMPT, door.open(ProgramScope.READ, this::listLessons));
        routes.post(ONE + "/lessons", Role.EXEMPT, door.open(ProgramScope.WRITE, this::begin));
    }

    private void list(Call call) {
        var part = Listing.of(call.ctx());
        var found = addressed.allSeries(call).stream()
                .skip(part.skip())
                .limit(part.limit() + 1L)
                .toList();
        part.show(call, found, series -> view(call, series));
    }

    private void show(Call call) {
        Answers.show(call, view(call, addressed.series(call, Deed.READ_FIGURES)));
    }

    private Map<String, Object> view(Call call, Series series) {
        var part = addressed.part(call, series);
        int lessons = part.may(Deed.WRITE)
                ? addressed.episodes().countIn(series.id())
                : addressed.episodes().countEverPublishedIn(series.id());
        return Members.of("id", series.id().value())
                .and("slug", series.slug().value())
                .and("title", series.title())
                .and("summary", series.summary())
                .and("zone", series.zone().getId())
                .and("lessons", lessons)
                .and("part", part.value())
                .and("createdAt", series.createdAt().toString())
                .map();
    }

    private void listLessons(Call call) {
        var series = addressed.series(call, Deed.READ_FIGURES);
        var listed = Listing.of(call.ctx());
        var found = addressed.part(call, series).may(Deed.WRITE)
                ? addressed.episodes().in(series.id(), listed.skip(), listed.limit() + 1)
                // of a series whose figures alone somebody reads they see what students have seen
                : addressed.episodes().everPublishedIn(series.id(), listed.skip(), listed.limit() + 1);
        listed.show(call, found, lessons::of);
    }

    /**
     * What a program says of a lesson that it begins.
     *
     * @param level empty for the one with which lessons of the series begin
     */
    private record Beginning(String title, Optional<Level> level) {
        private record Sent(String title, String level) {}

        static Beginning read(Incoming body) throws IOException {
            var sent = ProgramJson.read(ProgramJson.object(body.bytes()), Sent.class);
            return new Beginning(
                    Objects.requireNonNullElse(sent.title(), ""),
                    Optional.ofNullable(sent.level()).map(Beginning::level));
        }

        private static Level level(String word) {
            return Level.parse(word).orElseThrow(() -> Refusal.member("level", "program.refused.word"));
        }
    }

    private void begin(Call call) throws IOException {
        var series =
                addressed.series(call); // an answer that was given before is given to nobody who writes here no more
        var key = once.key(call);
        var body = Incoming.json(call.ctx());
        once.answer(call, key, body, () -> begin(call, series, Beginning.read(body)));
    }

    private Once.Made begin(Call call, Series series, Beginning asked) {
        var usual = beginnings.begun(series.id(), asked.title().strip());
        var begun = usual.edit().level(asked.level().orElse(usual.level())).done();
        var outcome = writing.create(call.who(), series.id(), begun);
        var lesson =
                outcome.result().orElseThrow(() -> Refusal.of(HttpStatus.UNPROCESSABLE_CONTENT, outcome.problems()));
        return new Once.Made(HttpStatus.CREATED, LessonView.address(lesson), lessons.of(lesson));
    }
}
