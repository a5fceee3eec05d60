package groundbass.archive;

import groundbass.catalog.educator.Audit;
import groundbass.catalog.episode.Beginnings;
import groundbass.catalog.episode.EpisodeService;
import groundbass.catalog.episode.Episodes;
import groundbass.catalog.episode.Revisions;
import groundbass.catalog.series.Outlooks;
import groundbass.catalog.series.Rhythms;
import groundbass.catalog.series.SeriesCatalog;
import groundbass.catalog.series.Styles;
import groundbass.catalog.settings.Settings;
import groundbass.catalog.upload.Uploads;
import groundbass.publishing.NewsTexts;
import groundbass.release.Releases;
import groundbass.store.Blobs;
import java.time.Clock;
import org.jdbi.v3.core.Jdbi;

/** What archives are written of and brought into, each made once. */
public record ArchiveParts(
        Jdbi jdbi,
        Clock clock,
        Audit audit,
        Settings settings,
        SeriesCatalog catalog,
        Styles styles,
        Rhythms rhythms,
        Outlooks outlooks,
        Beginnings beginnings,
        NewsTexts news,
        Episodes episodes,
        EpisodeService desk,
        Revisions revisions,
        Uploads uploads,
        Releases releases,
        Blobs blobs) {}
