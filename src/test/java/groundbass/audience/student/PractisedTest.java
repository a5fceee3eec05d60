package groundbass.audience.student;

import static groundbass.audience.Audience.ANNA;
import static groundbass.audience.Audience.BERT;
import static org.assertj.core.api.Assertions.assertThat;

import groundbass.audience.Audience;
import groundbass.catalog.episode.EpisodeId;
import groundbass.store.AtOnce;
import groundbass.store.BothDatabases;
import groundbass.store.Database;
import java.time.Duration;
import java.time.LocalDate;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ArgumentsSource;

class PractisedTest {
    private static final EpisodeId LANTERN = EpisodeId.next();
    private static final EpisodeId QUAY = EpisodeId.next();

    private static PractisedLine line(EpisodeId episode, String day, int tempo) {
        return new PractisedLine(episode, "line", LocalDate.parse(day), tempo, "3.1", "4");
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void browsersAreJoinedTheLaterDayCountsAndOfOneDayTheFastest(Database database) {
        try (database) {
            var audience = new Audience(database);
            var practice = new Practice(database.jdbi(), audience.clock);
            StudentId anna = audience.student(ANNA);
            practice.note(anna, List.of(line(LANTERN, "2026-03-02", 60), line(QUAY, "2026-03-01", 90)));
            practice.note(anna, List.of(line(LANTERN, "2026-03-01", 96)));
            practice.note(anna, List.of(line(LANTERN, "2026-03-02", 55)));
            assertThat(practice.of(anna))
                    .containsExactly(line(LANTERN, "2026-03-02", 60), line(QUAY, "2026-03-01", 90));
            practice.note(anna, List.of(line(LANTERN, "2026-03-02", 70), line(QUAY, "2026-03-04", 40)));
            assertThat(practice.of(anna))
                    .containsExactly(line(QUAY, "2026-03-04", 40), line(LANTERN, "2026-03-02", 70));
            assertThat(practice.of(audience.student(BERT))).isEmpty();
        }
    }

    /** Two windows tell the same line at once, which neither finds in the account. */
    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void windowsThatTellTheSameAtOnceAreBothHeard(Database database) throws Exception {
        try (database) {
            var audience = new Audience(database);
            var practice = new Practice(database.jdbi(), audience.clock);
            StudentId anna = audience.student(ANNA);
            for (int day = 1; day <= 9; day++) {
                var line = line(EpisodeId.next(), "2026-03-0" + day, 60);
                AtOnce.twice(() -> {
                    practice.note(anna, List.of(line));
                    practice.favour(anna, line.episode(), true);
                });
            }
            assertThat(practice.of(anna)).hasSize(9);
            assertThat(practice.favourites(anna)).hasSize(9);
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void whoseAccountIsFullIsStillToldOfWhatTheyKnow(Database database) {
        try (database) {
            var audience = new Audience(database);
            var practice = new Practice(database.jdbi(), audience.clock);
            StudentId anna = audience.student(ANNA);
            var many = IntStream.range(0, Practice.MOST)
                    .mapToObj(i -> line(EpisodeId.next(), "2026-03-01", 60))
                    .toList();
            practice.note(anna, many);
            var known = many.get(0).episode();
            practice.note(anna, List.of(line(QUAY, "2026-03-02", 60), line(known, "2026-03-02", 70)));
            assertThat(practice.of(anna))
                    .hasSize(Practice.MOST)
                    .startsWith(line(known, "2026-03-02", 70))
                    .noneMatch(line -> line.episode().equals(QUAY));
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void favouritesAreChosenAndGivenUpAndAllGoesWithTheAccount(Database database) {
        try (database) {
            var audience = new Audience(database);
            var practice = new Practice(database.jdbi(), audience.clock);
            StudentId anna = audience.student(ANNA);
            practice.favour(anna, QUAY, true);
            audience.clock.advance(Duration.ofMinutes(1));
            practice.favour(anna, LANTERN, true);
            practice.favour(anna, LANTERN, true);
            assertThat(practice.favourites(anna)).containsExactly(LANTERN, QUAY);
            practice.favour(anna, QUAY, false);
            practice.note(anna, List.of(line(LANTERN, "2026-03-02", 60), line(QUAY, "2026-03-01", 90)));
            practice.forget(anna, LANTERN);
            assertThat(practice.favourites(anna)).isEmpty();
            assertThat(practice.of(anna)).containsExactly(line(QUAY, "2026-03-01", 90));
            practice.favour(anna, QUAY, true);
            audience.students.forget(anna);
            assertThat(audience.rows("practised") + audience.rows("favourite")).isZero();
        }
    }
}
