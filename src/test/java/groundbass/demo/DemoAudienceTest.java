package groundbass.demo;

import static groundbass.audience.Audience.FIRST;
import static groundbass.audience.Audience.SECOND;
import static groundbass.audience.Audience.file;
import static org.assertj.core.api.Assertions.assertThat;

import groundbass.audience.Audience;
import groundbass.audience.Story;
import groundbass.audience.rollup.RollUps;
import groundbass.audience.statistics.DownloadCounts;
import groundbass.audience.statistics.FileUse;
import groundbass.audience.statistics.Weeks;
import groundbass.audience.student.DemoAddress;
import groundbass.demo.DemoAudience.Visits;
import groundbass.store.BothDatabases;
import groundbass.store.Database;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ArgumentsSource;

class DemoAudienceTest {
    private static final Instant MONDAY = Instant.parse("2026-02-02T08:00:00Z");
    private static final Instant FRIDAY = Instant.parse("2026-02-06T08:00:00Z");
    private static final List<Visits> VISITS = List.of(
            new Visits(file(FIRST, "bundle.zip", 5000), MONDAY, FRIDAY, 9, 4, 1),
            new Visits(file(FIRST, "sheet.pdf", 60), MONDAY, FRIDAY, 2, 0, 0),
            new Visits(
                    file(SECOND, "bundle.zip", 4000),
                    Instant.parse("2026-02-09T00:00:00Z"),
                    Instant.parse("2026-02-16T00:00:00Z"),
                    11,
                    0,
                    0));

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void comesAsOftenAsItIsTold(Database database) {
        try (database) {
            var audience = new Audience(database);
            Story.series(audience);
            DemoAudience.invent(database.jdbi(), VISITS);

            assertThat(audience.statistics.ofEpisode(FIRST).files())
                    .containsExactly(
                            new FileUse("bundle.zip", new DownloadCounts(13, 1, 0, 0)),
                            new FileUse("sheet.pdf", new DownloadCounts(2, 0, 0, 0)));
            assertThat(audience.statistics.ofEpisode(SECOND).students()).isEqualTo(11);
            assertThat(audience.statistics.byWeek(
                            Story.WHOLE, Weeks.until(LocalDate.of(2026, 2, 15), 4, ZoneOffset.UTC)))
                    .extracting(week -> week.monday() + " " + week.downloads().all())
                    .containsExactly(LocalDate.of(2026, 2, 2) + " 16", LocalDate.of(2026, 2, 9) + " 11");
            assertThat(audience.all().subList(0, 16))
                    .isNotEmpty()
                    .allMatch(one ->
                            !one.startedAt().isBefore(MONDAY) && one.startedAt().isBefore(FRIDAY));
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void isCountedWhereLaterDownloadsAreSummedUpAlready(Database database) {
        try (database) {
            var audience = new Audience(database); // after all visits
            audience.take(file(FIRST, "sheet.pdf", 60), Audience.VISITOR);
            audience.clock.advance(Duration.ofDays(3));
            var rollUps = new RollUps(database.jdbi(), audience.clock);
            rollUps.pass();
            DemoAudience.invent(database.jdbi(), VISITS);
            for (int pass = 0; pass < 2; pass++) {
                assertThat(audience.statistics.ofEpisode(SECOND).students()).isEqualTo(11);
                assertThat(rollUps.differences()).isEmpty();
                rollUps.pass();
            }
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void comesOnce(Database database) {
        try (database) {
            var audience = new Audience(database);
            DemoAudience.invent(database.jdbi(), VISITS);
            DemoAudience.invent(database.jdbi(), VISITS);
            assertThat(audience.rows("download")).isEqualTo(9 + 4 + 1 + 2 + 11);
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void nobodyInventedGetsLetters(Database database) {
        try (database) {
            var audience = new Audience(database);
            Story.series(audience);
            DemoAudience.invent(database.jdbi(), VISITS);
            assertThat(audience.statistics.students(List.of(Story.SERIES), 0, 100))
                    .isNotEmpty()
                    .allMatch(use -> DemoAddress.isInvented(use.student().email()));
            assertThat(audience.rows("student")).isEqualTo(DemoAudience.STUDENTS);
            assertThat(audience.rows("consent")).isZero();
        }
    }
}
