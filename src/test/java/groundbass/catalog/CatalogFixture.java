package groundbass.catalog;

import groundbass.Parts;
import groundbass.catalog.educator.Audit;
import groundbass.catalog.educator.AuditEntry;
import groundbass.catalog.educator.Educator;
import groundbass.catalog.educator.EducatorId;
import groundbass.catalog.episode.Episode;
import groundbass.catalog.episode.EpisodeService;
import groundbass.catalog.episode.EpisodeState;
import groundbass.catalog.episode.Episodes;
import groundbass.catalog.episode.Revisions;
import groundbass.catalog.series.Series;
import groundbass.catalog.series.SeriesCatalog;
import groundbass.catalog.series.SeriesForm;
import groundbass.document.EpisodeDocument;
import groundbass.document.Level;
import groundbass.document.LineSource;
import groundbass.store.Database;
import groundbass.store.DatabaseClock;
import groundbass.store.SettableClock;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.util.List;
import java.util.stream.IntStream;
import org.jdbi.v3.core.Jdbi;

/** The catalog on a fresh database, with one educator and one series. */
public final class CatalogFixture {
    public static final ZoneId VIENNA = ZoneId.of("Europe/Vienna");
    public static final SeriesForm FORM = new SeriesForm("Tide Patterns", "", "Low notes by the sea", "Europe/Vienna");

    public final SettableClock clock = SettableClock.at("2030-03-01T12:00:00.123456Z");
    public final Jdbi jdbi;
    public final Parts parts;
    public final Audit audit;
    public final SeriesCatalog catalog;
    public final Episodes episodes;
    public final Revisions revisions;
    public final EpisodeService desk;
    public final EducatorId owner;
    public final EducatorId stranger;
    public final Series series;

    public CatalogFixture(Database database) {
        jdbi = database.jdbi();
        parts = Parts.over(jdbi, clock);
        audit = parts.audit();
        catalog = parts.catalog();
        episodes = parts.episodes();
        revisions = parts.revisions();
        desk = parts.desk();
        owner = educator("studio@example.org");
        stranger = educator("other@example.org");
        series = catalog.create(owner, FORM).result().orElseThrow();
    }

    private EducatorId educator(String email) {
        var educator = new Educator(EducatorId.next(), "Studio", email, DatabaseClock.of(clock));
        jdbi.useHandle(handle -> handle.createUpdate("""
                        insert into educator (id, name, email, password_hash, created_at)
                        values (:id, :name, :email, 'none', :createdAt)""").bindMethods(educator).execute());
        return educator.id();
    }

    public Episode episode(String title) {
        return desk.create(owner, series.id(), title, Level.BEGINNER).result().orElseThrow();
    }

    public List<Episode> episodes(int count) {
        return IntStream.rangeClosed(1, count)
                .mapToObj(i -> episode("Lesson " + i))
                .toList();
    }

    public boolean publish(Episode episode) {
        return jdbi.inTransaction(handle -> episodes.markPublished(handle, episode.id(), clock.instant()));
    }

    public boolean schedule(Episode episode, String local) {
        var hour = LocalDateTime.parse(local);
        var promise = new EpisodeState.Scheduled(hour.atZone(VIENNA).toInstant(), VIENNA, hour, clock.instant(), 1);
        return jdbi.inTransaction(handle -> episodes.schedule(handle, episode.id(), promise));
    }

    public boolean unschedule(Episode episode) {
        return jdbi.inTransaction(handle -> episodes.unschedule(handle, episode.id()));
    }

    public Episode now(Episode episode) {
        return episodes.find(episode.id()).orElseThrow();
    }

    public static EpisodeDocument document(String title) {
        return EpisodeDocument.titled(title, Level.ADVANCED)
                .edit()
                .mainLine(new LineSource("Main line", "bar 1\n1-4 E5\n"))
                .done();
    }

    public List<String> auditedWords() {
        return audit.latest(100).stream().map(AuditEntry::what).toList();
    }
}
