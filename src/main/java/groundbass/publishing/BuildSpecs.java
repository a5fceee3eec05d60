package groundbass.publishing;

import groundbass.catalog.episode.Episode;
import groundbass.catalog.episode.Episodes;
import groundbass.catalog.episode.Revision;
import groundbass.catalog.series.SeriesCatalog;
import groundbass.catalog.series.Styles;
import groundbass.publishing.address.Addresses;
import groundbass.release.BuildSpec;
import groundbass.release.Releases;
import org.jdbi.v3.core.Handle;

/** What a release of an episode would be made of if it were made now. */
public final class BuildSpecs {
    private final SeriesCatalog catalog;
    private final Styles styles;
    private final Releases releases;
    private final Addresses addresses;

    public BuildSpecs(SeriesCatalog catalog, Styles styles, Releases releases, Addresses addresses) {
        this.catalog = catalog;
        this.styles = styles;
        this.releases = releases;
        this.addresses = addresses;
    }

    /** With the number that the episode's next release takes. */
    public BuildSpec of(Handle handle, Episode episode, Revision revision) {
        var series = catalog.find(episode.series()).orElseThrow();
        return new BuildSpec(
                revision.id(),
                releases.nextNumber(handle, episode.id()),
                series.title(),
                episode.number(),
                "%s-%02d-%s".formatted(series.slug(), episode.number(), Episodes.slug(episode, revision.document())),
                addresses.episode(episode.id()),
                revision.createdAt().atZone(series.zone()).toLocalDate(),
                styles.of(series.id()),
                BuildSpec.RENDERERS);
    }
}
