package groundbass.demo;

import groundbass.catalog.educator.EducatorId;
import groundbass.catalog.episode.Episode;
import groundbass.catalog.episode.EpisodeService;
import groundbass.catalog.episode.Episodes;
import groundbass.catalog.episode.Revision;
import groundbass.catalog.series.Series;
import groundbass.catalog.series.SeriesCatalog;
import groundbass.demo.SeriesPackage.EpisodePackage;
import groundbass.form.Outcome;
import groundbass.publishing.BuildSpecs;
import groundbass.release.Release;
import groundbass.release.ReleaseId;
import groundbass.release.Releases;
import java.time.Clock;
import java.time.Instant;
import java.util.ArrayList;
import java.util.function.Consumer;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;

/**
 * Takes a whole series in. What is there already under the same slug and number is left as it is, so an import that
 * was cut short is finished by running it again.
 */
public final class SeriesImport {
    private final Jdbi jdbi;
    private final Clock clock;
    private final SeriesCatalog catalog;
    private final EpisodeService desk;
    private final Episodes episodes;
    private final Releases releases;
    private final BuildSpecs specs;
    private final Consumer<ReleaseId> build;

    /** @param build builds a release before it returns */
    public SeriesImport(
            Jdbi jdbi,
            Clock clock,
            SeriesCatalog catalog,
            EpisodeService desk,
            Episodes episodes,
            Releases releases,
            BuildSpecs specs,
            Consumer<ReleaseId> build) {
        this.jdbi = jdbi;
        this.clock = clock;
        this.catalog = catalog;
        this.desk = desk;
        this.episodes = episodes;
        this.releases = releases;
        this.specs = specs;
        this.build = build;
    }

    /** @throws IllegalArgumentException where the package says something that an educator could not */
    public Series run(EducatorId owner, SeriesPackage series) {
        var found = catalog.find(series.slug()).orElseGet(() -> done(catalog.create(owner, series.form())));
        var written = new ArrayList<Episode>();
        for (int i = 0; i < series.episodes().size(); i++) {
            var incoming = series.episodes().get(i);
            written.add(episodes.find(found.slug(), i + 1).orElseGet(() -> write(owner, found, incoming)));
        }
        // the newest first: building takes a while, and it is what readers look for
        for (int i = written.size() - 1; i >= 0; i--) {
            bringOut(owner, written.get(i), series.episodes().get(i));
        }
        return found;
    }

    private void bringOut(EducatorId owner, Episode episode, EpisodePackage incoming) {
        if (!episode.isPublished() && incoming.publishedWeeksAgo().isPresent()) {
            int weeksAgo = incoming.publishedWeeksAgo().getAsInt();
            publish(owner, episode, DemoCalendar.week(clock.instant(), weeksAgo));
        }
    }

    private Episode write(EducatorId owner, Series series, EpisodePackage incoming) {
        var document = incoming.document();
        return jdbi.inTransaction(handle -> {
            var made = done(desk.create(owner, series.id(), document.title(), document.level()));
            done(desk.saveDraft(owner, made.id(), 0, document));
            return made;
        });
    }

    private void publish(EducatorId owner, Episode episode, Instant out) {
        var revision = done(desk.makeRevision(owner, episode.id(), ""));
        var release = jdbi.inTransaction(handle -> release(handle, episode, revision));
        build.accept(release);
        jdbi.useTransaction(handle -> {
            if (releases.publish(handle, release, out)) {
                episodes.markPublished(handle, episode.id(), out);
            }
        });
    }

    /** The one that an import cut short has entered already, else a new one. */
    private ReleaseId release(Handle handle, Episode episode, Revision revision) {
        var spec = specs.of(handle, episode, revision);
        return releases.latest(episode.id())
                .filter(made -> made.spec().makesTheSameAs(spec) && !made.isFailed())
                .map(Release::id)
                .orElseGet(() -> releases.create(handle, episode.id(), spec, false, clock.instant()));
    }

    private static <T> T done(Outcome<T> outcome) {
        return outcome.result().orElseThrow(() -> new IllegalArgumentException("refused: " + outcome.problems()));
    }
}
