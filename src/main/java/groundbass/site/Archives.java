package groundbass.site;

import groundbass.archive.ArchiveImport;
import groundbass.archive.ArchiveParts;
import groundbass.archive.SeriesExport;
import groundbass.archive.file.ArchiveLimits;
import groundbass.catalog.episode.Beginnings;
import groundbass.catalog.episode.EpisodeService;
import groundbass.catalog.episode.Revisions;
import groundbass.catalog.series.Outlooks;
import groundbass.catalog.series.Rhythms;
import groundbass.catalog.series.Series;
import groundbass.catalog.series.SeriesCatalog;
import groundbass.catalog.series.Styles;
import groundbass.catalog.settings.Settings;
import groundbass.identity.Slug;
import groundbass.publishing.NewsTexts;
import groundbass.store.Database;
import java.io.IOException;
import java.nio.file.Path;
import java.time.Clock;
import java.util.Optional;

/**
 * Single series into files and back; at the command line without pages and jobs.
 *
 * @param parts what they are written of and brought into, which a whole site works with as well
 */
public record Archives(ArchiveParts parts, SeriesExport exporting, ArchiveImport importing) {
    /** Of an open database and the files of its site, to read. @throws CannotOpen where the two do not belong together */
    public static Archives toRead(Database database, Config config, Clock clock) throws IOException {
        var accounts = Accounts.over(database.jdbi(), clock);
        var stored = Stored.toRead(database, accounts, config, clock);
        StoredFiles.compare(stored, database.jdbi());
        return over(database, accounts, stored, clock);
    }

    /**
     * Of an open database and the files of its site, to write.
     *
     * @param lock which keeps servers away
     * @throws CannotOpen where the two do not belong together
     */
    public static Archives toWrite(Database database, Config config, SiteLock lock, Clock clock) {
        var accounts = Accounts.over(database.jdbi(), clock);
        var stored = Stored.over(database, accounts, config, clock);
        stored.blobs().guardedBy(lock::isHeld);
        new StoredFiles(stored.blobs(), stored.named()).pairWith(database.jdbi());
        return over(database, accounts, stored, clock);
    }

    static Archives over(Database database, Accounts accounts, Stored stored, Clock clock) {
        var jdbi = database.jdbi();
        var audit = accounts.audit();
        var catalog = new SeriesCatalog(jdbi, audit, clock);
        var revisions = new Revisions(jdbi, clock);
        var parts = new ArchiveParts(
                jdbi,
                clock,
                audit,
                new Settings(jdbi, audit),
                catalog,
                new Styles(jdbi, audit),
                new Rhythms(jdbi, audit),
                new Outlooks(jdbi, audit),
                new Beginnings(jdbi, audit),
                new NewsTexts(jdbi, audit),
                stored.episodes(),
                new EpisodeService(jdbi, audit, clock, catalog, stored.episodes(), revisions),
                revisions,
                stored.uploads(),
                stored.releases(),
                stored.blobs());
        return new Archives(parts, new SeriesExport(parts), new ArchiveImport(parts, ArchiveLimits.USUAL));
    }

    /** The series at an address. */
    public Optional<Series> series(String address) {
        return Slug.parse(address).flatMap(parts.catalog()::find);
    }

    /**
     * Writes an archive of a series. The file has its name only once it is whole, and only its owner may read it where the
     * system knows owners.
     *
     * @throws java.nio.file.FileAlreadyExistsException where there is such a file
     */
    public SeriesExport.Written make(Series series, Path file) throws IOException {
        return PrivateFile.write(file, out -> exporting.writeTo(series, out));
    }
}
