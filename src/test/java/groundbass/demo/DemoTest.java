package groundbass.demo;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import groundbass.Parts;
import groundbass.catalog.educator.Audit;
import groundbass.catalog.episode.Episode;
import groundbass.catalog.episode.Episodes;
import groundbass.catalog.series.SeriesCatalog;
import groundbass.identity.Slug;
import groundbass.release.Built;
import groundbass.release.ReleaseId;
import groundbass.release.Releases;
import groundbass.store.BothDatabases;
import groundbass.store.Database;
import groundbass.store.SettableClock;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ArgumentsSource;

class DemoTest {
    private static final Slug SERIES = new Slug("harbour-rounds");

    private final SettableClock clock = SettableClock.at("2026-03-02T09:00:00Z");
    private final List<ReleaseId> built = new ArrayList<>();

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void bringsOutSixLessonsAWeekApart(Database database) {
        try (database) {
            var demo = demo(database);
            assertThat(demo.openStudio()).isPresent();
            demo.load();
            var out = lessons(database);
            assertThat(out).hasSize(6).allMatch(Episode::isPublished);
            for (int i = 1; i < out.size(); i++) {
                var before = out.get(i - 1).publishedAt().orElseThrow();
                assertThat(out.get(i).publishedAt().orElseThrow()).isEqualTo(before.plusSeconds(7 * 24 * 3600));
            }
            assertThat(out).isNotEmpty().allSatisfy(lesson -> assertThat(
                            lesson.publishedAt().orElseThrow())
                    .isBefore(clock.instant()));
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void everyLessonCanBeReadBeforeTheFirstSoundIsMade(Database database) {
        try (database) {
            var releases = new Releases(database.jdbi());
            var out = new ArrayList<Long>();
            var demo = demo(database, id -> {
                out.add(lessons(database).stream()
                        .filter(lesson -> releases.current(lesson.id()).isPresent())
                        .count());
                Built.ready(releases, id, clock.instant());
            });
            demo.openStudio();
            demo.load();
            assertThat(out).containsExactly(6L, 6L, 6L, 6L, 6L, 6L);
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void loadsNothingTwice(Database database) {
        try (database) {
            var demo = demo(database);
            demo.openStudio();
            demo.load();
            int once = built.size();
            demo.load();
            assertThat(built).hasSize(once);
            assertThat(demo.openStudio()).isEmpty();
            assertThat(lessons(database)).hasSize(6);
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void goesOnWithTheReleaseThatAnEarlierLoadWasCutShortIn(Database database) {
        try (database) {
            var cut = demo(database, id -> {
                throw new IllegalStateException("killed");
            });
            cut.openStudio();
            assertThatThrownBy(cut::load).hasMessage("killed");
            demo(database).load();
            var releases = new Releases(database.jdbi());
            assertThat(lessons(database))
                    .allSatisfy(lesson -> assertThat(releases.of(lesson.id())).hasSize(1));
        }
    }

    private Demo demo(Database database) {
        return demo(database, id -> {
            built.add(id);
            Built.ready(new Releases(database.jdbi()), id, clock.instant());
        });
    }

    private Demo demo(Database database, Consumer<ReleaseId> build) {
        var jdbi = database.jdbi();
        var parts = Parts.over(jdbi, clock);
        var incoming = parts.seriesImport(() -> "https://example.org", build);
        return new Demo(jdbi, clock, parts.educators(), parts.settings(), parts.episodes(), parts.releases(), incoming);
    }

    private List<Episode> lessons(Database database) {
        var jdbi = database.jdbi();
        var series = new SeriesCatalog(jdbi, new Audit(jdbi, clock), clock)
                .find(SERIES)
                .orElseThrow();
        return new Episodes(jdbi).in(series.id(), 0, 100);
    }
}
