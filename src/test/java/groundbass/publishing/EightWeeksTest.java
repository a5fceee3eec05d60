package groundbass.publishing;

import static groundbass.publishing.Studio.done;
import static org.assertj.core.api.Assertions.assertThat;

import groundbass.audience.download.DownloadToken;
import groundbass.audience.download.Downloads;
import groundbass.audience.download.FileRequest;
import groundbass.audience.download.HeldReleases;
import groundbass.audience.download.ReleasedFile;
import groundbass.audience.download.Requester;
import groundbass.audience.download.VisitorKey;
import groundbass.audience.news.Ask;
import groundbass.audience.news.AskedOn;
import groundbass.audience.student.StudentId;
import groundbass.audience.student.Students;
import groundbass.catalog.episode.Episode;
import groundbass.catalog.episode.EpisodeId;
import groundbass.catalog.series.Deed;
import groundbass.catalog.series.RhythmForm;
import groundbass.catalog.series.Rhythms;
import groundbass.catalog.series.Series;
import groundbass.post.Delivery;
import groundbass.post.EmailAddress;
import groundbass.post.Postman;
import groundbass.release.ReleaseNote;
import groundbass.store.BothDatabases;
import groundbass.store.Database;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ArgumentsSource;

/** An educator fills eight weeks by the rhythm of a series and goes away; the clock is moved. */
class EightWeeksTest {
    private static final EmailAddress ANNA = new EmailAddress("anna@example.net");
    private static final EmailAddress BERT = new EmailAddress("bert@example.net");
    private static final EmailAddress CARL = new EmailAddress("carl@example.net");
    private static final EmailAddress DORA = new EmailAddress("dora@example.net");

    /**
     * Wednesdays at five in Berlin from the fourth of March 2026 on, but for the eighth of April. IANA time zone database:
     * UTC+1 until the last Sunday of March (the 29th), UTC+2 from there on.
     */
    private static final List<Instant> HOURS = Stream.of(
                    "2026-03-04T16:00:00Z",
                    "2026-03-11T16:00:00Z",
                    "2026-03-18T16:00:00Z",
                    "2026-03-25T16:00:00Z",
                    "2026-04-01T15:00:00Z",
                    "2026-04-15T15:00:00Z",
                    "2026-04-22T15:00:00Z",
                    "2026-04-29T15:00:00Z")
            .map(Instant::parse)
            .toList();

    /** A letter that left. */
    private record Sent(EmailAddress to, String subject) {}

    /** The educator's studio, a series with a rhythm, and what its readers got. */
    private static final class Term {
        private final Database database;
        private final Studio studio;
        private final List<EpisodeId> lessons;
        private final Series series;
        private final List<Sent> sent = new ArrayList<>();
        private final Postman postman;

        Term(Database database) {
            this.database = database;
            studio = new Studio(database);
            lessons = IntStream.rangeClosed(1, 8)
                    .mapToObj(week -> studio.episode("Week " + week))
                    .toList();
            series = studio.catalog.open(studio.educator, Deed.KEEP).get(0);
            postman = new Postman(
                    database.jdbi(),
                    (id, letter) -> {
                        sent.add(new Sent(letter.to(), letter.subject()));
                        return Delivery.SENT;
                    },
                    studio.clock,
                    Runnable::run);
        }

        /** Lessons take the free hours of the rhythm, one after the other. */
        void fill() {
            var rhythms = new Rhythms(database.jdbi(), studio.audit);
            var rhythm = done(rhythms.save(
                            studio.educator, series.id(), new RhythmForm("2026-03-04", "17:00", "1", "2026-04-08")))
                    .orElseThrow();
            var slots = Slot.coming(rhythm, series.zone(), List.of(), studio.clock.instant(), lessons.size());
            for (int week = 0; week < lessons.size(); week++) {
                done(studio.promise(lessons.get(week), slots.get(week).local()));
            }
            studio.buildAll();
        }

        /** The passes come round more than once, as they do. */
        void round() {
            for (int i = 0; i < 2; i++) {
                studio.publicationJob.pass();
                studio.newsRound.pass();
                postman.deliverDue();
            }
        }

        void agree(EmailAddress email) {
            studio.newsReaders.agree(new Ask(series.id(), email, Locale.ENGLISH, "Yes.", AskedOn.ACCOUNT));
        }

        StudentId student(EmailAddress email) {
            var students = new Students(database.jdbi(), studio.outbox, studio.audit, studio.clock);
            return database.jdbi()
                    .inTransaction(handle -> students.create(handle, email, Locale.ENGLISH))
                    .id();
        }

        void takes(StudentId student, int lesson) {
            var id = lessons.get(lesson);
            var downloads = new Downloads(
                    database.jdbi(), DownloadToken.of(database.jdbi()), new VisitorKey(studio.clock), studio.clock);
            var file = new ReleasedFile(studio.current(id).value(), id, "sheet.pdf", 10);
            downloads.begin(new FileRequest(file, new Requester.Known(student), true, Optional.empty()));
        }

        List<String> subjects(EmailAddress reader) {
            return sent.stream()
                    .filter(letter -> letter.to().equals(reader))
                    .map(Sent::subject)
                    .toList();
        }
    }

    private static List<String> told(int weeks) {
        return IntStream.rangeClosed(1, weeks)
                .mapToObj(week -> "New in Low Tide: Week " + week)
                .toList();
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void eachIsOutAtItsHourAndToldOnce(Database database) {
        try (database) {
            var term = new Term(database);
            term.fill();
            List.of(ANNA, BERT, CARL).forEach(term::agree);
            for (int week = 0; week < 8; week++) {
                term.studio.clock.set(HOURS.get(week).minusSeconds(1).toString());
                term.round();
                assertThat(out(term)).hasSize(week);
                term.studio.clock.set(HOURS.get(week).toString());
                term.round();
                assertThat(out(term)).hasSize(week + 1);
                if (week == 2) {
                    term.studio.newsReaders.end(term.series.id(), CARL);
                }
            }
            assertThat(out(term))
                    .extracting(lesson -> lesson.publishedAt().orElseThrow())
                    .containsExactlyElementsOf(HOURS);
            assertThat(term.subjects(ANNA)).containsExactlyElementsOf(told(8));
            assertThat(term.subjects(BERT)).containsExactlyElementsOf(told(8));
            assertThat(term.subjects(CARL)).containsExactlyElementsOf(told(3));
            assertThat(term.sent).hasSize(19);
        }
    }

    private static List<Episode> out(Term term) {
        return term.studio.episodes.publishedIn(term.series.id());
    }

    /** After weeks without a pass, as when the machine was switched off. */
    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void afterALongSleepEachIsOutAndToldOnce(Database database) {
        try (database) {
            var term = new Term(database);
            term.fill();
            term.agree(ANNA);
            term.studio.clock.set("2026-05-01T00:00:00Z");
            term.round();
            assertThat(out(term)).hasSize(8);
            assertThat(term.subjects(ANNA)).containsExactlyInAnyOrderElementsOf(told(8));
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void aCorrectionIsToldToThoseWhoHoldAnEarlierOneAndAgreed(Database database) {
        try (database) {
            var term = new Term(database);
            term.fill();
            term.agree(ANNA);
            term.agree(BERT); // takes nothing
            term.studio.clock.set("2026-03-12T00:00:00Z");
            term.round();
            var anna = term.student(ANNA);
            term.takes(anna, 1);
            term.takes(term.student(DORA), 1); // agreed to nothing
            term.sent.clear();

            var second = term.lessons.get(1);
            var before = term.studio.releases.current(second).orElseThrow();
            assertThat(term.studio.news.holders(term.series.id(), second)).isEqualTo(1);
            term.studio.write(second, "bar 1\n1-4 E7\n");
            term.studio.clock.advance(Duration.ofMinutes(1));
            var note = new ReleaseNote("Bar 1 is at the seventh fret.", true);
            assertThat(term.studio
                            .publisher
                            .correct(term.studio.educator, second, new ReleaseNote(" ", true), Seen.ANYHOW)
                            .problems())
                    .extracting("field")
                    .containsExactly("note");
            done(term.studio.publisher.correct(term.studio.educator, second, note, Seen.ANYHOW));
            term.round();
            assertThat(term.sent).as("it is not built yet").isEmpty();
            term.studio.buildAll();
            term.round();

            var now = term.studio.releases.current(second).orElseThrow();
            assertThat(now.note()).isEqualTo(note);
            assertThat(term.sent).containsExactly(new Sent(ANNA, "Corrected: Week 2 (Low Tide)"));
            var held = new HeldReleases(database.jdbi()).of(anna, second);
            assertThat(held).containsExactly(before.id().value());
            var changes = new ReleaseChanges(term.studio.releases, term.studio.revisions);
            var older = changes.since(held, now).orElseThrow();
            assertThat(older.notes()).containsExactly("Bar 1 is at the seventh fret.");
            assertThat(older.held()).isEqualTo(1);
            assertThat(older.current()).isEqualTo(2);
            assertThat(changes.clauses(older)).isNotEmpty();

            term.takes(anna, 1);
            assertThat(changes.since(new HeldReleases(database.jdbi()).of(anna, second), now))
                    .as("with the new one in hand nothing is older")
                    .isEmpty();
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void aCorrectionOfWhichNobodyIsToBeToldIsNotTold(Database database) {
        try (database) {
            var term = new Term(database);
            term.fill();
            term.agree(ANNA);
            term.studio.clock.set("2026-03-05T00:00:00Z");
            term.round();
            term.takes(term.student(ANNA), 0);
            term.sent.clear();
            term.studio.write(term.lessons.get(0), "bar 1\n1-4 E7\n");
            term.studio.clock.advance(Duration.ofMinutes(1));
            done(term.studio.publisher.correct(
                    term.studio.educator, term.lessons.get(0), new ReleaseNote("A slip.", false), Seen.ANYHOW));
            term.studio.buildAll();
            term.round();
            assertThat(term.studio.releases.of(term.lessons.get(0))).hasSize(2);
            assertThat(term.sent).isEmpty();
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void oneIsTakenBackAndTheOthersStay(Database database) {
        try (database) {
            var term = new Term(database);
            term.fill();
            term.studio.clock.set("2026-05-01T00:00:00Z");
            term.round();
            var fifth = term.lessons.get(4);
            done(term.studio.takingBack.takeBack(term.studio.educator, term.studio.find(fifth), "Asked by its owner."));
            term.round();
            assertThat(out(term)).hasSize(7).extracting(Episode::id).doesNotContain(fifth);
            assertThat(term.studio.find(fifth).number()).isEqualTo(5);
        }
    }
}
