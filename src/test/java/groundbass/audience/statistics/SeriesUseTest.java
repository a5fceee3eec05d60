package groundbass.audience.statistics;

import static groundbass.audience.Audience.FIRST;
import static groundbass.audience.Audience.SECOND;
import static groundbass.audience.Story.SERIES;
import static org.assertj.core.api.Assertions.assertThat;

import groundbass.audience.Leaving;
import groundbass.audience.Story;
import groundbass.audience.rollup.RollUps;
import groundbass.store.BothDatabases;
import groundbass.store.Database;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ArgumentsSource;

/** All numbers are counted by hand from the table that {@link Story} shows. */
class SeriesUseTest {
    /** Lesson 1: downloads 1 2; 3 4 after a day; 7 8 after a week. Lesson 2: 5; 6 after a day. */
    private static final List<LessonAges> AGES = List.of(
            new LessonAges(FIRST, new AtAge(2, 1), new AtAge(4, 2), new AtAge(6, 3)),
            new LessonAges(SECOND, new AtAge(1, 1), new AtAge(2, 2), new AtAge(2, 2)));

    /** Anna and Bert began in the first week and both came in the second; Cara began in the second and came three later. */
    private static final List<Cohort> COHORTS = List.of(
            new Cohort(LocalDate.of(2026, 3, 2), List.of(2L, 2L, 0L, 0L, 0L)),
            new Cohort(LocalDate.of(2026, 3, 9), List.of(1L, 0L, 0L, 1L)));

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void lessonsAreTheSameAtEqualAgeHoweverMuchIsSummedUp(Database database) {
        try (database) {
            var story = new Story(database);
            story.all();
            var rollUps = new RollUps(database.jdbi(), story.audience.clock);
            for (var hour : List.of("2026-03-03T00:00:00Z", "2026-03-12T02:00:00Z", "2026-04-09T00:00:00Z")) {
                story.at(hour);
                rollUps.pass();
                assertThat(story.audience.statistics.ages(List.of(FIRST, SECOND)))
                        .as(hour)
                        .isEqualTo(AGES);
                assertThat(story.audience.statistics.ages(List.of(SECOND))).containsExactly(AGES.get(1));
            }
            assertThat(story.audience.statistics.ages(List.of())).isEmpty();
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void tellsWhoComesBackAndWhen(Database database) {
        try (database) {
            var story = new Story(database);
            var use = new SeriesUse(database.jdbi());
            assertThat(use.cohorts(SERIES, 12)).isEmpty();
            story.all();
            story.at("2026-04-09T00:00:00Z");
            new RollUps(database.jdbi(), story.audience.clock).pass();

            assertThat(use.cohorts(SERIES, 12)).isEqualTo(COHORTS);
            assertThat(use.cohorts(SERIES, 4)).containsExactly(COHORTS.get(1)); // the weeks since 03-09
            assertThat(use.staying(SERIES, List.of(1, 2, 3))).containsExactly(3L, 3L, 0L);
            assertThat(use.clock(SERIES))
                    .containsExactly(
                            new HourUse(1, 0, 1), // 8
                            new HourUse(1, 17, 3), // 1 2 5
                            new HourUse(2, 18, 1), // 3
                            new HourUse(2, 21, 1), // 6
                            new HourUse(3, 9, 1), // 7
                            new HourUse(3, 10, 1)); // 4

            new Leaving(database.jdbi(), story.audience.students, story.audience.newsReaders).forget(story.bert);
            assertThat(use.cohorts(SERIES, 12)).isEqualTo(COHORTS);
            assertThat(use.staying(SERIES, List.of(1, 2, 3))).containsExactly(2L, 2L, 0L); // those with an account
            assertThat(story.audience.statistics.ages(List.of(FIRST, SECOND))).isEqualTo(AGES);
            assertThat(story.audience.statistics.takingPart(story.cara))
                    .containsExactly(new TakingPart(SERIES, LocalDate.of(2026, 3, 9), 2));
        }
    }

    @Test
    void writesTablesForASpreadsheet() {
        var table = new StringBuilder();
        var csv = new StatisticsCsv(Locale.ENGLISH, id -> Story.VIENNA, id -> "Lesson", table);
        csv.ages();
        csv.age(FIRST, LessonAges.WEEK, new AtAge(4, 2));
        csv.cohorts(List.of(COHORTS.get(1)));
        csv.clock(List.of(new HourUse(1, 17, 3)));
        assertThat(table)
                .hasToString(String.join(
                        "\r\n",
                        "Lesson,Age,Students,Downloads",
                        "Lesson,7 days,2,4",
                        "Began in the week of,Week of,Students",
                        "2026-03-09,2026-03-09,1",
                        "2026-03-09,2026-03-16,0",
                        "2026-03-09,2026-03-23,0",
                        "2026-03-09,2026-03-30,1",
                        "Weekday (1 is Monday),Hour,Downloads",
                        "1,17,3",
                        ""));
    }
}
