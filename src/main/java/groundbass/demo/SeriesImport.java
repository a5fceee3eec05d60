package groundbass.demo;

import groundbass.archive.WrittenSeries;
import groundbass.catalog.educator.EducatorId;
import groundbass.catalog.episode.Episode;
import groundbass.catalog.episode.EpisodeService;
import groundbass.catalog.episode.Episodes;
import groundbass.catalog.episode.Revision;
import groundbass.catalog.series.Series;
import groundbass.catalog.series.SeriesCatalog;
import groundbass.form.Outcome;
import groundbass.identity.Slug;
import groundbass.publishing.BuildSpecs;
import groundbass.release.Release;
import groundbass.release.ReleaseId;
import groundbass.release.Releases;
import java.time.Clock;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;

/**
 * Takes a whole series in. What is there already under the same slug and number is left as it is, so an import that
 * was cut short is finished by running it again. Lessons can be read as soon as their pages are drawn; then what their
 * pages play is made for all of them, then all the rest, each time the newest first, since it is what readers look for.
 */
public final class SeriesImport {
    private final Jdbi jdbi;
    private final Clock clock;
    private final SeriesCatalog catalog;
    private final EpisodeService desk;
    private final Episodes episodes;
    private final Releases releases;
    private final BuildSpecs specs;
    private final Making making;

    /**
     * How releases are made.
     *
     * @param open makes what is read first of one before it returns
     * @param draw makes all that is drawn or written of one before it returns
     * @param play makes what is played on its page before it returns
     * @param build makes all of one before it returns
     */
    public record Making(
            Consumer<ReleaseId> open, Consumer<ReleaseId> draw, Consumer<ReleaseId> play, Consumer<ReleaseId> build) {}

    public SeriesImport(
            Jdbi jdbi,
            Clock clock,
            SeriesCatalog catalog,
            EpisodeService desk,
            Episodes episodes,
            Releases releases,
            BuildSpecs specs,
            Making making) {
        this.jdbi = jdbi;
        this.clock = clock;
        this.catalog = catalog;
        this.desk = desk;
        this.episodes = episodes;
        this.releases = releases;
        this.specs = specs;
        this.making = making;
    }

    /** @throws IllegalArgumentException where the folder says something that an educator could not */
    public Series run(EducatorId owner, WrittenSeries series) {
        if (!series.findings().isEmpty()) {
            throw new IllegalArgumentException("cannot be read: " + series.findings());
        }
        var found = catalog.find(new Slug(series.form().slug()))
                .orElseGet(() -> done(catalog.create(owner, series.form())));
        var written = new ArrayList<Episode>();
        for (int i = 0; i < series.lessons().size(); i++) {
            var incoming = series.lessons().get(i);
            written.add(episodes.find(found.slug(), i + 1)
                    .orElseGet(() -> done(desk.create(owner, found.id(), incoming.document()))));
        }
        for (int i = written.size() - 1; i >= 0; i--) {
            bringOut(owner, written.get(i), series.lessons().get(i));
        }
        goOn(written, making.draw());
        goOn(written, making.play());
        goOn(written, making.build());
        return found;
    }

    private void goOn(List<Episode> written, Consumer<ReleaseId> work) {
        for (int i = written.size() - 1; i >= 0; i--) {
            releases.current(written.get(i).id())
                    .filter(Release::isUnderWay)
                    .ifPresent(release -> work.accept(release.id()));
        }
    }

    private void bringOut(EducatorId owner, Episode episode, WrittenSeries.Lesson incoming) {
        if (!episode.isPublished() && !incoming.weeksAgo().isEmpty()) {
            publish(owner, episode, DemoCalendar.week(clock.instant(), Integer.parseInt(incoming.weeksAgo())));
        }
    }

    private void publish(EducatorId owner, Episode episode, Instant out) {
        var revision = done(desk.makeRevision(owner, episode.id(), ""));
        var release = jdbi.inTransaction(handle -> release(handle, episode, revision));
        making.open().accept(release);
        jdbi.useTransaction(handle -> {
            if (releases.publishReadable(handle, release, out)) {
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
