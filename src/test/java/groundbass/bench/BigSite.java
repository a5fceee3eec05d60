package groundbass.bench;

import groundbass.Parts;
import groundbass.audience.rollup.RollUps;
import groundbass.catalog.educator.Audit;
import groundbass.catalog.educator.EducatorId;
import groundbass.catalog.educator.Educators;
import groundbass.catalog.episode.EpisodeId;
import groundbass.catalog.series.SeriesCatalog;
import groundbass.catalog.series.SeriesForm;
import groundbass.catalog.settings.Imprint;
import groundbass.catalog.settings.Settings;
import groundbass.document.Clearance;
import groundbass.document.Level;
import groundbass.document.LineSource;
import groundbass.document.Rights;
import groundbass.form.Outcome;
import groundbass.publishing.Publisher;
import groundbass.publishing.Seen;
import groundbass.store.Database;
import groundbass.store.Instants;
import groundbass.store.RandomId;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Random;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.statement.PreparedBatch;

/**
 * What a site may hold after many years, invented: one series of {@value #LESSONS} lessons that are out, {@value
 * #STUDENTS} students, as many downloads as are asked for, of three years, and their sums. The same on every machine but for its ids.
 */
final class BigSite {
    static final int LESSONS = 2_000;
    static final int STUDENTS = 20_000;

    private static final int AT_ONCE = 5_000;
    /** How many words a lesson's texts have, of how many. */
    private static final int WORDS = 150;

    private static final int VOCABULARY = 4_000;
    private static final Duration SPAN = Duration.ofDays(3 * 365);
    private static final List<String> FILES = List.of("sheet.pdf", "bundle.zip", "full-100.mp3", "line.mid");
    /** Of keys in no order, which are made much faster at the end; as the migrations have them. */
    private static final List<Index> INDEXES = List.of(
            new Index("download_of_episode", "episode_id, id"),
            new Index("download_of_student", "student_id, started_at"),
            new Index("download_of_student_in_lesson", "student_id, episode_id, id"));

    private record Index(String name, String columns) {}

    private static final List<String> KEYS = List.of("C", "G", "Em", "Am", "F", "D", "Bb");
    private static final List<String> METERS = List.of("4/4", "4/4", "4/4", "3/4", "6/8", "12/8");
    private static final List<String> TECHNIQUES = List.of("finger", "finger slap pop", "pick", "finger tap");
    private static final List<String> KINDS = List.of("view", "sign-in", "play", "whole", "loop");
    private static final List<String> STATES = List.of("complete", "complete", "complete", "broken off", "handed over");

    private final Handle handle;
    private final Clock clock;
    private final int downloads;
    private final Random random = new Random(1);

    private BigSite(Handle handle, Clock clock, int downloads) {
        this.handle = handle;
        this.clock = clock;
        this.downloads = downloads;
    }

    /** Fills an empty database; does nothing where somebody is here already. Returns whose site it is. */
    static EducatorId fill(Database database, Clock clock, int downloads) {
        var jdbi = database.jdbi();
        var audit = new Audit(jdbi, clock);
        var educators = new Educators(jdbi, audit, clock);
        var there = educators.owner();
        if (there.isPresent()) {
            return there.get().id();
        }
        var educator = done(educators.create("Long Studio", "desk@long.example", "a password for the bench"))
                .id();
        var episode = lesson(database, audit, clock, educator);
        jdbi.useHandle(handle -> new BigSite(handle, clock, downloads).multiply(episode));
        new RollUps(jdbi, clock).recompute();
        return educator;
    }

    /** The lesson that all others are copies of, ordered and never built. */
    private static EpisodeId lesson(Database database, Audit audit, Clock clock, EducatorId educator) {
        var jdbi = database.jdbi();
        var series = done(new SeriesCatalog(jdbi, audit, clock)
                .create(educator, new SeriesForm("Long Series", "", "Many lessons.", "Europe/Vienna")));
        var desk = Parts.over(jdbi, clock).desk();
        var episode = done(desk.create(educator, series.id(), "Lesson", Level.BEGINNER))
                .id();
        var draft = desk.draft(educator, episode).orElseThrow();
        var document = draft.document()
                .edit()
                .mainLine(new LineSource("", "bar 1\n1-4 E5\n"))
                .rights(new Rights("", "", "Own work.", Clearance.OWN))
                .done();
        done(desk.saveDraft(educator, episode, draft.version(), document));
        done(new Settings(jdbi, audit)
                .saveImprint(educator, new Imprint("Long Studio", "desk@long.example", "", "", "")));
        var parts = Parts.over(jdbi, clock).publishing(() -> "https://long.example", release -> {});
        done(new Publisher(parts).bringOut(educator, episode, Seen.ANYHOW));
        return episode;
    }

    private void multiply(EpisodeId first) {
        Instant start = clock.instant().minus(SPAN);
        handle.execute("update release set state = 'ready', built_at = ?, published_at = ?", at(start), at(start));
        handle.execute("update episode set published_at = ?, scheduled_at = null", at(start));
        var episodes = IntStream.rangeClosed(1, LESSONS)
                .mapToObj(number -> number == 1 ? first.value() : copy(first, number, start))
                .toList();
        var students =
                IntStream.range(0, STUDENTS).mapToObj(i -> RandomId.next()).toList();
        traits(episodes);
        visits(episodes);
        students(students, start);
        INDEXES.forEach(index -> handle.execute("drop index " + index.name()));
        downloads(episodes, students, start);
        INDEXES.forEach(
                index -> handle.execute("create index " + index.name() + " on download (" + index.columns() + ")"));
        handle.execute("analyze"); // both databases plan by what they know of their tables, and would learn it later
    }

    private String copy(EpisodeId first, int number, Instant start) {
        String id = RandomId.next();
        String revision = RandomId.next();
        var published = at(start.plus(SPAN.multipliedBy(number).dividedBy(LESSONS)));
        handle.execute("""
                insert into episode (id, series_id, number, slug, title, level, summary, published_at, created_at)
                select cast(? as varchar), series_id, cast(? as integer), cast(? as varchar), cast(? as varchar), level,
                    summary, cast(? as timestamp with time zone), created_at
                from episode where id = ?""", id, number, "lesson-" + number, "Lesson " + number, published, first.value());
        handle.execute("""
                insert into revision (id, episode_id, number, form_version, document, note, educator_id, created_at)
                select cast(? as varchar), cast(? as varchar), number, form_version, document, note, educator_id, created_at
                from revision where episode_id = ?""", revision, id, first.value());
        handle.execute("""
                insert into release (id, episode_id, revision_id, number, recipe, correction, state, steps_done,
                    steps_total, failure, created_at, built_at, published_at)
                select cast(? as varchar), cast(? as varchar), cast(? as varchar), number, recipe, correction, state,
                    steps_done, steps_total, failure, created_at, built_at, cast(? as timestamp with time zone)
                from release where episode_id = ?""", RandomId.next(), id, revision, published, first.value());
        return id;
    }

    /** As many words as a lesson with notes and a walkthrough has. */
    private void traits(List<String> episodes) {
        var batch = handle.prepareBatch("""
                insert into lesson_traits (episode_id, release_id, techniques, key_name, meter, tempo, strings, words,
                    title_words)
                select ?, (select id from release where episode_id = ?), ?, ?, ?, ?, ?, ?, ?""");
        for (int number = 1; number <= episodes.size(); number++) {
            String words = random.ints(WORDS, 0, VOCABULARY)
                    .distinct()
                    .mapToObj(BigSite::word)
                    .collect(Collectors.joining(" ", " lesson ", " "));
            String id = episodes.get(number - 1);
            batch.bind(0, id)
                    .bind(1, id)
                    .bind(2, " " + any(TECHNIQUES) + " ")
                    .bind(3, any(KEYS))
                    .bind(4, any(METERS))
                    .bind(5, 50 + random.nextInt(100))
                    .bind(6, 4 + random.nextInt(3))
                    .bind(7, words)
                    .bind(8, " lesson " + number + " ")
                    .add();
        }
        batch.execute();
    }

    /** Of three syllables, the same for the same number. */
    private static String word(int number) {
        var syllables =
                List.of("ba", "ro", "ki", "te", "mu", "la", "so", "ni", "da", "fe", "go", "vi", "pu", "ze", "ha", "wo");
        return syllables.get(number % 16) + syllables.get(number / 16 % 16) + syllables.get(number / 256 % 16);
    }

    private String any(List<String> choices) {
        return choices.get(random.nextInt(choices.size()));
    }

    /** Visits of every age that a lesson has, what was played and repeated of it, and a course that was gone to. */
    private void visits(List<String> episodes) {
        var sums = handle.prepareBatch("insert into visit_sum (episode_id, kind, age, visitors) values (?, ?, ?, ?)");
        var played = handle.prepareBatch(
                "insert into played_part (episode_id, line, quarters, visitors) values (?, 'line', ?, ?)");
        var looped = handle.prepareBatch(
                "insert into repeated_bar (episode_id, release_number, line, bar, visitors) values (?, 1, 'line', ?, ?)");
        for (int i = 0; i < episodes.size(); i++) {
            long days = SPAN.toDays() * (episodes.size() - i) / episodes.size();
            for (int age = 0; age <= days; age += age < 28 ? 1 : 28) {
                for (String kind : KINDS) {
                    sums.bind(0, episodes.get(i))
                            .bind(1, kind)
                            .bind(2, age)
                            .bind(3, 1 + random.nextInt(200))
                            .add();
                    executeIfFull(sums);
                }
            }
            for (int quarters = 0; quarters <= 4; quarters++) {
                played.bind(0, episodes.get(i))
                        .bind(1, quarters)
                        .bind(2, 500 - 100 * quarters)
                        .add();
            }
            looped.bind(0, episodes.get(i))
                    .bind(1, 1)
                    .bind(2, random.nextInt(300))
                    .add();
        }
        List.of(sums, played, looped).forEach(PreparedBatch::execute);
    }

    private void students(List<String> ids, Instant start) {
        var batch = handle.prepareBatch("insert into student (id, email, locale, created_at) values (?, ?, 'en', ?)");
        for (int i = 0; i < ids.size(); i++) {
            batch.bind(0, ids.get(i))
                    .bind(1, "student-%05d@long.example".formatted(i))
                    .bind(2, at(start))
                    .add();
            executeIfFull(batch);
        }
        batch.execute();
    }

    private void downloads(List<String> episodes, List<String> students, Instant start) {
        var batch = handle.prepareBatch("""
                insert into download (id, release_id, episode_id, file_name, file_size, student_id, started_at, touched_at,
                    state, covered, bytes_sent, robot, repeated)
                values (?, 'release000000001', ?, ?, 200000, ?, ?, ?, ?, '0-200000', 200000, ?, ?)""");
        for (int i = 0; i < downloads; i++) {
            Instant at = start.plusMillis(SPAN.toMillis() * i / downloads);
            boolean known = random.nextInt(5) > 0;
            boolean robot = !known && random.nextInt(4) == 0;
            batch.bind(0, id(at))
                    .bind(1, episodes.get(random.nextInt(episodes.size())))
                    .bind(2, FILES.get(random.nextInt(FILES.size())))
                    .bind(3, known ? students.get(random.nextInt(students.size())) : null)
                    .bind(4, at(at))
                    .bind(5, at(at))
                    .bind(6, STATES.get(random.nextInt(STATES.size())))
                    .bind(7, robot)
                    .bind(8, !known && !robot && random.nextInt(4) == 0)
                    .add();
            executeIfFull(batch);
        }
        batch.execute();
    }

    private static void executeIfFull(PreparedBatch batch) {
        if (batch.size() >= AT_ONCE) {
            batch.execute();
        }
    }

    /** As the program makes them: nine digits of the moment, and chance. */
    private static String id(Instant at) {
        String moment = Long.toString(at.toEpochMilli(), 36);
        return "0".repeat(9 - moment.length()) + moment + RandomId.next().substring(9);
    }

    private static Object at(Instant instant) {
        return Instants.toColumn(instant);
    }

    private static <T> T done(Outcome<T> outcome) {
        return outcome.result()
                .orElseThrow(() -> new IllegalStateException(outcome.problems().toString()));
    }
}
