package groundbass.catalog;

import groundbass.document.EpisodeDocument;
import groundbass.document.Level;
import groundbass.document.LineSource;
import groundbass.store.Database;
import groundbass.store.Now;
import groundbass.store.SettableClock;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.util.List;
import java.util.stream.IntStream;
import org.jdbi.v3.core.Jdbi;

/** The catalog on a fresh database, with one educator and one series. */
final class CatalogFixture {
    static final ZoneId VIENNA = ZoneId.of("Europe/Vienna");
    static final SeriesForm FORM = new SeriesForm("Tide Patterns", "", "Low notes by the sea", "Europe/Vienna");

    final SettableClock clock = SettableClock.at("2030-03-01T12:00:00.123456Z");
    final Jdbi jdbi;
    final Audit audit;
    final SeriesCatalog catalog;
    final Episodes episodes;
    final Revisions revisions;
    final EpisodeDesk desk;
    final EducatorId owner;
    final EducatorId stranger;
    final Series series;

    CatalogFixture(Database database) {
        jdbi = database.jdbi();
        audit = new Audit(jdbi, clock);
        catalog = new SeriesCatalog(jdbi, audit, clock);
        episodes = new Episodes(jdbi);
        revisions = new Revisions(jdbi, clock);
        desk = new EpisodeDesk(jdbi, audit, clock);
        owner = educator("studio@example.org");
        stranger = educator("other@example.org");
        series = catalog.create(owner, FORM).result().orElseThrow();
    }

    private EducatorId educator(String email) {
        var educator = new Educator(EducatorId.next(), "Studio", email, Now.of(clock));
        jdbi.useHandle(handle -> new EducatorRepository().insert(handle, educator, "no password"));
        return educator.id();
    }

    Episode episode(String title) {
        return desk.create(owner, series.id(), title, Level.BEGINNER).result().orElseThrow();
    }

    List<Episode> episodes(int count) {
        return IntStream.rangeClosed(1, count)
                .mapToObj(i -> episode("Lesson " + i))
                .toList();
    }

    boolean publish(Episode episode) {
        return jdbi.inTransaction(handle -> episodes.markPublished(handle, episode.id(), clock.instant()));
    }

    boolean schedule(Episode episode, String local) {
        var hour = LocalDateTime.parse(local);
        return jdbi.inTransaction(handle ->
                episodes.schedule(handle, episode.id(), hour.atZone(VIENNA).toInstant(), VIENNA, hour));
    }

    boolean unschedule(Episode episode) {
        return jdbi.inTransaction(handle -> episodes.unschedule(handle, episode.id()));
    }

    Episode now(Episode episode) {
        return episodes.find(episode.id()).orElseThrow();
    }

    static EpisodeDocument document(String title) {
        return EpisodeDocument.titled(title, Level.ADVANCED)
                .edit()
                .mainLine(new LineSource("Main line", "bar 1\n1-4 E5\n"))
                .done();
    }

    List<String> auditedWords() {
        return audit.latest(100).stream().map(AuditEntry::what).toList();
    }
}
