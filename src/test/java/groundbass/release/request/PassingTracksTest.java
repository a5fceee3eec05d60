package groundbass.release.request;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import groundbass.Parts;
import groundbass.catalog.CatalogFixture;
import groundbass.catalog.educator.EducatorId;
import groundbass.catalog.educator.TrialEducators;
import groundbass.catalog.series.SeriesForm;
import groundbass.catalog.series.SeriesId;
import groundbass.document.Level;
import groundbass.effort.Busy;
import groundbass.identity.Sha256;
import groundbass.release.BuildSpec;
import groundbass.release.Built;
import groundbass.release.FileRole;
import groundbass.release.ReleaseFile;
import groundbass.release.ReleaseId;
import groundbass.store.BothDatabases;
import groundbass.store.Database;
import groundbass.store.SettableClock;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.LocalDate;
import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ArgumentsSource;

class PassingTracksTest {
    private static final long PLENTY = 1_000_000;

    private final SettableClock clock = SettableClock.at("2026-03-02T09:00:00Z");
    private Parts parts;
    private ReleaseId one;
    private ReleaseId other;

    private void fill(Database database) {
        parts = Parts.over(database.jdbi(), clock);
        var educator = TrialEducators.create(database.jdbi(), clock, "Quay Studio", "desk@example.org", "four strings!")
                .id();
        var series = parts.catalog()
                .create(educator, new SeriesForm("Low Tide", "low-tide", "", "UTC"))
                .result()
                .orElseThrow()
                .id();
        one = release(educator, series, "Slack Water");
        other = release(educator, series, "Neap");
    }

    private ReleaseId release(EducatorId educator, SeriesId series, String title) {
        var episode = parts.desk()
                .create(educator, series, title, Level.BEGINNER)
                .result()
                .orElseThrow()
                .id();
        int version = parts.desk().draft(educator, episode).orElseThrow().version();
        parts.desk().saveDraft(educator, episode, version, CatalogFixture.document(title));
        var revision = parts.desk()
                .makeRevision(educator, episode, "")
                .result()
                .orElseThrow()
                .id();
        var spec = new BuildSpec(
                revision, 1, "Low Tide", 1, "a", "https://example.org/", LocalDate.EPOCH, BuildSpec.RENDERERS);
        var id = parts.jdbi()
                .inTransaction(handle -> parts.releases().create(handle, episode, spec, false, clock.instant()));
        Built.ready(parts.releases(), id, clock.instant());
        return id;
    }

    /** Nobody is turned away for good because others have asked for many. */
    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void aReleaseThatHasTooManyLetsItsOldestGo(Database database) {
        try (database) {
            fill(database);
            var tracks = tracks(3, PLENTY);
            enter(tracks, other, "oldest");
            Stream.of("a", "b", "c").forEach(name -> enter(tracks, one, name));
            assertThat(names(one)).containsExactly("a", "b", "c");
            clock.advance(Duration.ofHours(1));
            enter(tracks, one, "d");
            assertThat(names(one)).containsExactly("b", "c", "d");
            assertThat(names(other)).containsExactly("oldest");
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void aSiteThatHasTooMuchLetsTheOldestGoWhoseeverTheyAre(Database database) {
        try (database) {
            fill(database);
            var tracks = tracks(120, 30);
            enter(tracks, other, "a");
            enter(tracks, one, "b");
            enter(tracks, other, "c");
            clock.advance(Duration.ofHours(1));
            enter(tracks, one, "d");
            assertThat(names(other)).containsExactly("c");
            assertThat(names(one)).containsExactly("b", "d");
        }
    }

    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void whatSomebodyMayStillBeTakingStays(Database database) {
        try (database) {
            fill(database);
            var tracks = tracks(2, PLENTY);
            enter(tracks, one, "a");
            enter(tracks, one, "b");
            clock.advance(Duration.ofMinutes(58).minusSeconds(1));
            assertThatThrownBy(() -> tracks.makeRoom(one)).isInstanceOf(Busy.class);
            tracks.makeRoom(other);
            assertThat(names(one)).containsExactly("a", "b");
            clock.advance(Duration.ofSeconds(1));
            tracks.makeRoom(one);
            assertThat(names(one)).containsExactly("b");
        }
    }

    /** An earlier version beside this one enters a track without its hour. */
    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void whatHasNoHourIsOld(Database database) {
        try (database) {
            fill(database);
            var tracks = tracks(2, PLENTY);
            enter(tracks, one, "a");
            enter(tracks, one, "b");
            parts.jdbi().useHandle(handle -> handle.execute("update release_file set made_at = null where name = 'b'"));
            enter(tracks, one, "c");
            assertThat(names(one)).containsExactly("a", "c");
        }
    }

    /** What goes of others makes no room in a release that is full of young ones. */
    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void aReleaseThatIsFullOfYoungOnesStaysSo(Database database) {
        try (database) {
            fill(database);
            enter(tracks(120, PLENTY), other, "a");
            enter(tracks(120, PLENTY), other, "b");
            clock.advance(Duration.ofHours(1));
            enter(tracks(120, PLENTY), one, "c");
            enter(tracks(120, PLENTY), one, "d");
            var tracks = tracks(2, 40);
            assertThatThrownBy(() -> tracks.makeRoom(one)).isInstanceOf(Busy.class);
            assertThat(names(one)).containsExactly("c", "d");
        }
    }

    /** However much that is. */
    @ParameterizedTest
    @ArgumentsSource(BothDatabases.class)
    void whatAReleaseWasBuiltOfStays(Database database) {
        try (database) {
            fill(database);
            var built = parts.releases().files().of(one);
            var tracks = tracks(1, 1);
            enter(tracks, one, "a");
            clock.advance(Duration.ofHours(2));
            enter(tracks, one, "b");
            assertThat(names(one)).containsExactly("b");
            assertThat(parts.releases().files().of(one)).startsWith(built.toArray(ReleaseFile[]::new));
        }
    }

    private PassingTracks tracks(int files, long bytes) {
        return new PassingTracks(parts.jdbi(), parts.releases(), files, bytes, clock);
    }

    /** A minute after the one before. */
    private void enter(PassingTracks tracks, ReleaseId release, String name) {
        tracks.makeRoom(release);
        var file = new ReleaseFile(
                name, FileRole.ON_REQUEST, "audio/mpeg", 10, Sha256.of(name.getBytes(StandardCharsets.US_ASCII)));
        assertThat(tracks.enter(release, file)).contains(file);
        clock.advance(Duration.ofMinutes(1));
    }

    private List<String> names(ReleaseId release) {
        return parts.releases().files().of(release).stream()
                .filter(file -> file.role() == FileRole.ON_REQUEST)
                .map(ReleaseFile::name)
                .toList();
    }
}
