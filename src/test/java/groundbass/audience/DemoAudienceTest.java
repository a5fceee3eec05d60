package groundbass.audience;

import static groundbass.audience.Audience.FIRST;
import static groundbass.audience.Audience.SECOND;
import static groundbass.audience.Audience.file;
import static org.assertj.core.api.Assertions.assertThat;

import groundbass.store.BothDatabases;
import groundbass.store.Database;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ArgumentsSource;

class DemoAudienceTest {
    private static final Instant BEGINNING = Instant.parse("2026-02-02T08:00:00Z");
    private static final List<DemoAudience.Offer> OFFERS = List.of(
            new DemoAudience.Offer(BEGINNING, List.of(file(FIRST, "bundle.zip", 5000), file(FIRST, "sheet.pdf", 60))),
            new DemoAudience.Offer(Instant.parse("2026-02-16T08:00:00Z"), List.of(file(SECOND, "bundle.zip", 4000))));

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void tellsOneStoryOfSeveralWeeksOnce(Database database) {
        try (database) {
            var audience = new Audience(database);
            DemoAudience.invent(database.jdbi(), OFFERS, audience.clock.instant());
            long told = audience.rows("download");
            DemoAudience.invent(database.jdbi(), OFFERS, audience.clock.instant());

            assertThat(audience.rows("download")).isEqualTo(told);
            assertThat(audience.statistics.byWeek(List.of(FIRST, SECOND), ZoneOffset.UTC))
                    .hasSizeGreaterThan(2);
            assertThat(audience.statistics.students(List.of(FIRST, SECOND)))
                    .allMatch(use -> use.student().email().domain().equals(DemoAudience.DOMAIN));
            assertThat(audience.all())
                    .allMatch(download -> !download.startedAt().isBefore(BEGINNING))
                    .noneMatch(download -> download.startedAt()
                            .isAfter(audience.clock.instant().plusSeconds(90)));
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void nobodyInventedGetsLetters(Database database) {
        try (database) {
            var audience = new Audience(database);
            DemoAudience.invent(database.jdbi(), OFFERS, audience.clock.instant());
            assertThat(audience.rows("student")).isEqualTo(24);
            assertThat(audience.rows("consent")).isZero();
        }
    }
}
