package groundbass.audience.rollup;

import static groundbass.audience.Audience.FIRST;
import static groundbass.audience.Audience.SECOND;
import static groundbass.audience.Story.VIENNA;
import static groundbass.audience.Story.WHOLE;
import static org.assertj.core.api.Assertions.assertThat;

import groundbass.audience.Audience;
import groundbass.audience.Leaving;
import groundbass.audience.Story;
import groundbass.audience.statistics.DownloadCounts;
import groundbass.audience.statistics.EpisodeUse;
import groundbass.audience.statistics.FileUse;
import groundbass.audience.statistics.StatisticsScope;
import groundbass.audience.statistics.WeekUse;
import groundbass.audience.statistics.Weeks;
import groundbass.store.BothDatabases;
import groundbass.store.Database;
import java.time.LocalDate;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.function.Supplier;
import java.util.stream.IntStream;
import org.jdbi.v3.core.statement.SqlLogger;
import org.jdbi.v3.core.statement.StatementContext;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ArgumentsSource;

/** All numbers are counted by hand from the table that {@link Story} shows. */
class RollUpsTest {
    private static final Weeks SPRING = Weeks.until(LocalDate.of(2026, 4, 1), 6, VIENNA);

    private static final EpisodeUse FIRST_LESSON = new EpisodeUse(
            FIRST,
            3, // Anna, Bert, Cara
            1,
            new DownloadCounts(4, 1, 1, 0), // 1 2 4 8, 3, 7
            1,
            List.of(
                    new FileUse("line.mid", new DownloadCounts(1, 0, 0, 0)),
                    new FileUse("sheet.pdf", new DownloadCounts(3, 1, 1, 0))));
    private static final EpisodeUse SECOND_LESSON = new EpisodeUse(
            SECOND,
            2, // Anna, Cara
            0,
            new DownloadCounts(2, 0, 0, 0), // 5 6
            0,
            List.of(new FileUse("sheet.pdf", new DownloadCounts(2, 0, 0, 0))));

    private static final List<WeekUse> WEEKS = List.of(
            week(2, 2, new DownloadCounts(3, 1, 0, 0)), // Anna, Bert: 1 2 4, 3
            week(9, 3, new DownloadCounts(2, 0, 1, 0)), // Anna, Cara, Bert: 5 6, 7
            week(30, 1, new DownloadCounts(1, 0, 0, 0))); // Cara: 8
    private static final List<WeekUse> WEEKS_OF_FIRST = List.of(
            week(2, 2, new DownloadCounts(3, 1, 0, 0)),
            week(9, 1, new DownloadCounts(0, 0, 1, 0)),
            week(30, 1, new DownloadCounts(1, 0, 0, 0)));

    private static WeekUse week(int day, long students, DownloadCounts downloads) {
        return new WeekUse(LocalDate.of(2026, 3, day), students, downloads);
    }

    private static void readsAsCountedByHand(Story story) {
        var statistics = story.audience.statistics;
        assertThat(statistics.ofEpisodes(List.of(FIRST, SECOND))).containsExactly(FIRST_LESSON, SECOND_LESSON);
        assertThat(statistics.ofEpisode(FIRST)).isEqualTo(FIRST_LESSON);
        assertThat(statistics.byWeek(WHOLE, SPRING)).isEqualTo(WEEKS);
        assertThat(statistics.byWeek(new StatisticsScope.OfLesson(FIRST), SPRING))
                .isEqualTo(WEEKS_OF_FIRST);
    }

    /** Does something in another session before the first statement that reads a table. */
    private static <T> T meanwhile(Database database, String table, Runnable work, Supplier<T> asked) {
        var done = new AtomicBoolean();
        database.jdbi().setSqlLogger(new SqlLogger() {
            @Override
            public void logBeforeExecution(StatementContext context) {
                if (context.getRenderedSql().contains("from " + table) && done.compareAndSet(false, true)) {
                    CompletableFuture.runAsync(work)
                            .orTimeout(20, TimeUnit.SECONDS)
                            .join();
                }
            }
        });
        try {
            return asked.get();
        } finally {
            database.jdbi().setSqlLogger(SqlLogger.NOP_SQL_LOGGER);
            assertThat(done).isTrue();
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void aRecountSeesOneMomentAndHoldsNobodyUp(Database database) {
        try (database) {
            var story = new Story(database);
            story.all();
            var rollUps = new RollUps(database.jdbi(), story.audience.clock);
            story.at("2026-03-06T08:00:00Z");
            rollUps.pass();
            story.at("2026-04-09T00:00:00Z");
            assertThat(meanwhile(database, "taken_file", rollUps::pass, rollUps::differences))
                    .isEmpty();
            assertThat(rows(database, "taken_hour")).as("summed up meanwhile").isEqualTo(7);
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void aPageReadsSumsAndRecordsOfOneMoment(Database database) {
        try (database) {
            var story = new Story(database);
            story.all();
            var rollUps = new RollUps(database.jdbi(), story.audience.clock);
            story.at("2026-04-09T00:00:00Z");
            assertThat(meanwhile(
                            database,
                            "taken_file",
                            rollUps::pass,
                            () -> story.audience.statistics.ofEpisodes(List.of(FIRST, SECOND))))
                    .containsExactly(FIRST_LESSON, SECOND_LESSON);
        }
    }

    /** A download of the first lesson is under way when everything stops, and nobody looks for three days. */
    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void whatACrashLeftOpenIsSummedUpAsBrokenOff(Database database) {
        try (database) {
            var story = new Story(database);
            story.at("2026-03-02T16:30:00Z")
                    .downloads
                    .begin(Audience.whole(Audience.file(FIRST, "sheet.pdf", 1000), Audience.VISITOR));
            var rollUps = new RollUps(database.jdbi(), story.audience.clock);
            story.at("2026-03-05T00:00:00Z");
            rollUps.pass();
            assertThat(rows(database, "taken_file")).isEqualTo(1);
            story.audience.downloads.sweep();
            assertThat(story.audience.statistics.ofEpisode(FIRST).downloads())
                    .isEqualTo(new DownloadCounts(0, 1, 0, 0));
            assertThat(rollUps.differences()).isEmpty();
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void pagesReadTheSameHoweverMuchIsSummedUp(Database database) {
        try (database) {
            var story = new Story(database);
            story.all();
            var rollUps = new RollUps(database.jdbi(), story.audience.clock);
            readsAsCountedByHand(story);
            // the hours at which nothing, three, five, six, seven and all of eight downloads are older than two days
            for (var hour : List.of(
                    "2026-03-04T16:00:00Z",
                    "2026-03-06T08:00:00Z",
                    "2026-03-12T02:00:00Z",
                    "2026-03-13T07:59:00Z",
                    "2026-03-14T00:00:00Z",
                    "2026-03-31T22:00:00Z",
                    "2026-04-01T00:00:00Z",
                    "2026-04-09T00:00:00Z")) {
                story.at(hour);
                rollUps.pass();
                assertThat(rollUps.differences()).as(hour).isEmpty();
                readsAsCountedByHand(story);
            }
            assertThat(rows(database, "taken_file where complete + broken_off + handed_over > 0"))
                    .isEqualTo(3); // not all from the records
            assertThat(rows(database, "taken_hour")).isEqualTo(7); // lesson 1: 0, 25, 41, 208, 654; lesson 2: 0, 28
            assertThat(rows(database, "taken_week")).isEqualTo(4); // 03-02: 1; 03-09: 1, 2; 03-30: 1
        }
    }

    private static long rows(Database database, String from) {
        return database.jdbi().withHandle(handle -> handle.createQuery("select count(*) from " + from)
                .mapTo(Long.class)
                .one());
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void eachRecordIsSummedUpOnceByTwoNodesAtOnce(Database database) {
        try (database) {
            var story = new Story(database);
            story.all();
            story.at("2026-04-09T00:00:00Z");
            var nodes = IntStream.range(0, 4)
                    .mapToObj(node ->
                            CompletableFuture.runAsync(() -> new RollUps(database.jdbi(), story.audience.clock).pass()))
                    .toArray(CompletableFuture<?>[]::new);
            CompletableFuture.allOf(nodes).join();
            assertThat(new RollUps(database.jdbi(), story.audience.clock).differences())
                    .isEmpty();
            readsAsCountedByHand(story);
        }
    }

    /** Bert's weeks are 03-02 and 03-09; what he took stays counted as it was, whatever of it is summed up. */
    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void whoLeavesStaysCounted(Database database) {
        try (database) {
            var story = new Story(database);
            var rollUps = new RollUps(database.jdbi(), story.audience.clock);
            story.firstWeek();
            story.secondWeek();
            story.at("2026-03-11T09:00:00Z"); // week 03-02 is summed up, week 03-09 is not
            rollUps.pass();
            leave(story, database);
            assertThat(story.audience.contents("download")).doesNotContain(story.bert.value());
            assertThat(rollUps.differences()).isEmpty();
            story.lastWeek();
            readsAsCountedByHand(story);
            story.at("2026-04-09T00:00:00Z");
            rollUps.pass();
            assertThat(rollUps.differences()).isEmpty();
            readsAsCountedByHand(story);
            rollUps.recompute();
            readsAsCountedByHand(story);
        }
    }

    private static void leave(Story story, Database database) {
        new Leaving(database.jdbi(), story.audience.students, story.audience.newsReaders).forget(story.bert);
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void differencesAreFoundInEveryTableAndMended(Database database) {
        try (database) {
            var story = new Story(database);
            story.all();
            story.at("2026-04-09T00:00:00Z");
            var rollUps = new RollUps(database.jdbi(), story.audience.clock);
            rollUps.pass();
            for (var spoilt : List.of(
                    "update taken_file set robots = robots + 1",
                    "update taken_hour set newcomers = newcomers + 1 where age = 28",
                    "delete from taken_week where students = 3 or students = 2",
                    "update taken_series_week set complete = complete + 1",
                    "update taken_cohort set students = students + 1",
                    "update taken_clock set downloads = downloads + 1 where local_hour = 17",
                    "update taking_student set weeks = weeks + 1")) {
                database.jdbi().useHandle(handle -> handle.execute(spoilt));
                var table = spoilt.split(" ")[spoilt.startsWith("delete") ? 2 : 1];
                assertThat(rollUps.differences()).singleElement().asString().startsWith(table);
                rollUps.recompute();
                assertThat(rollUps.differences()).isEmpty();
            }
            readsAsCountedByHand(story);
        }
    }

    /** In UTC download 8 is of Sunday, and so of the week of 03-23. */
    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void weeksAreMadeAnewWhereTheSeriesHasAnotherZone(Database database) {
        try (database) {
            var story = new Story(database);
            story.all();
            story.at("2026-04-09T00:00:00Z");
            var rollUps = new RollUps(database.jdbi(), story.audience.clock);
            rollUps.pass();
            database.jdbi().useHandle(handle -> handle.execute("update series set zone = 'UTC'"));
            var utc = Weeks.until(LocalDate.of(2026, 4, 1), 6, java.time.ZoneId.of("UTC"));
            for (int i = 0; i < 2; i++) {
                assertThat(story.audience.statistics.byWeek(WHOLE, utc))
                        .extracting(week -> week.monday() + " " + week.students() + " "
                                + week.downloads().all())
                        .containsExactly("2026-03-02 2 4", "2026-03-09 3 3", "2026-03-23 1 1");
                rollUps.pass();
            }
            assertThat(rollUps.differences()).isEmpty();
            assertThat(rows(database, "taken_series where zone = 'UTC'")).isEqualTo(1);
        }
    }
}
