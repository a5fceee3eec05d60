package groundbass.web.student.lesson;

import groundbass.catalog.episode.Episode;
import groundbass.catalog.episode.EpisodeId;
import groundbass.catalog.episode.Episodes;
import groundbass.catalog.series.Outlook;
import groundbass.catalog.series.Series;
import groundbass.catalog.series.SeriesCatalog;
import groundbass.catalog.series.SeriesId;
import groundbass.identity.Slug;
import groundbass.release.Release;
import groundbass.release.ReleaseId;
import groundbass.release.Releases;
import groundbass.release.SeriesReleases;
import groundbass.web.student.lesson.PublishedSeries.Part;
import java.time.Clock;
import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.regex.Pattern;

/**
 * What is out, and nothing else. What was found holds for a second, so a change may show that much later. Thread-safe.
 */
public final class Lessons {
    private static final Duration FRESH = Duration.ofSeconds(1);
    private static final int MOST = 500;

    private static final Pattern PERMANENT = Pattern.compile("/e/([^/?#]+)(?:[?#].*)?");
    private static final Pattern READABLE = Pattern.compile("/series/([^/?#]+)/([1-9][0-9]{0,5})(?:[?#].*)?");

    private record Address(Slug series, int number) {}

    private final SeriesCatalog catalog;
    private final Episodes episodes;
    private final Releases releases;
    private final SeriesReleases ofSeries;
    private final Function<SeriesId, Outlook> outlook;
    private final Clock clock;
    private final TimedCache<Address, PublishedLesson> lessons;
    private final TimedCache<Slug, PublishedSeries> series;
    private final TimedCache<Integer, List<PublishedSeries>> all;

    /** @param outlook what may be known of lessons that wait for their hour */
    public Lessons(
            SeriesCatalog catalog,
            Episodes episodes,
            Releases releases,
            SeriesReleases ofSeries,
            Function<SeriesId, Outlook> outlook,
            Clock clock) {
        this.catalog = catalog;
        this.episodes = episodes;
        this.releases = releases;
        this.ofSeries = ofSeries;
        this.outlook = outlook;
        this.clock = clock;
        this.lessons = TimedCache.small(clock, FRESH, MOST);
        this.series = TimedCache.small(clock, FRESH, MOST);
        this.all = TimedCache.small(clock, FRESH, 1);
    }

    /** Every series that has something out, the latest publication first. */
    public List<PublishedSeries> all() {
        return all.get(0, this::readAll).orElse(List.of());
    }

    public Optional<PublishedSeries> series(Slug slug) {
        return series.get(slug, () -> catalog.find(slug).flatMap(this::read));
    }

    Optional<PublishedLesson> lesson(Slug slug, int number) {
        return lessons.get(new Address(slug, number), () -> read(slug, number));
    }

    /** A lesson that was out and was taken back. */
    Optional<WithdrawnLesson> withdrawn(Slug slug, int number) {
        return episodes.find(slug, number)
                .flatMap(episode -> episode.withdrawal().flatMap(why -> catalog.find(slug)
                        .map(found -> new WithdrawnLesson(found.title(), number, path(found), why.at(), why.why()))));
    }

    /** Of a series of which nothing else is out there is no page. */
    private Optional<String> path(Series found) {
        return series(found.slug()).map(published -> Paths.of(published.series()));
    }

    /** The readable address of an episode that is out or was. */
    Optional<String> path(EpisodeId id) {
        return episodes.find(id).filter(Episode::isPublished).flatMap(episode -> catalog.find(episode.series())
                .map(found -> Paths.of(found, episode)));
    }

    /** An episode that is out. */
    Optional<Episode> out(EpisodeId id) {
        return episodes.find(id).filter(Episode::isOut);
    }

    /** The episode that a path of this site leads to, if it is one of a lesson that is out. */
    public Optional<Episode> at(String path) {
        var permanent = PERMANENT.matcher(path);
        if (permanent.matches()) {
            return EpisodeId.parse(permanent.group(1)).flatMap(this::out);
        }
        var readable = READABLE.matcher(path);
        return readable.matches()
                ? Slug.parse(readable.group(1))
                        .flatMap(slug -> lesson(slug, Integer.parseInt(readable.group(2))))
                        .map(PublishedLesson::episode)
                : Optional.empty();
    }

    /** What readers of an episode that is out get. */
    Optional<Release> release(EpisodeId id) {
        return episodes.find(id).filter(Episode::isOut).flatMap(episode -> releases.current(episode.id()));
    }

    /** A release that was published, be it the latest or not, of an episode that is out: what anybody may see. */
    Optional<Release> published(ReleaseId id) {
        return releases.find(id)
                .filter(release -> release.publishedAt().isPresent())
                .filter(release ->
                        episodes.find(release.episode()).filter(Episode::isOut).isPresent());
    }

    /** Whether files are being made at this moment. */
    boolean inTheMaking() {
        return !releases.builds().unfinished().isEmpty();
    }

    private Optional<List<PublishedSeries>> readAll() {
        var found =
                catalog.published().stream().flatMap(one -> read(one).stream()).toList();
        return Optional.of(found).filter(list -> !list.isEmpty());
    }

    private Optional<PublishedSeries> read(Series found) {
        var current = ofSeries.current(found.id());
        var parts = episodes.publishedIn(found.id()).stream()
                .filter(episode -> current.containsKey(episode.id()))
                .map(episode -> new Part(episode, current.get(episode.id())))
                .toList();
        var shown = outlook.apply(found.id());
        var coming = shown == Outlook.NOTHING ? List.<Coming>of() : coming(found);
        return Optional.of(new PublishedSeries(found, parts, shown, coming)).filter(one -> !parts.isEmpty());
    }

    private List<Coming> coming(Series found) {
        var now = clock.instant();
        return episodes.scheduled().stream()
                .filter(episode -> episode.series().equals(found.id()))
                .flatMap(episode -> Coming.of(episode, now))
                .toList();
    }

    private Optional<PublishedLesson> read(Slug slug, int number) {
        return episodes.find(slug, number).filter(Episode::isOut).flatMap(this::read);
    }

    private Optional<PublishedLesson> read(Episode episode) {
        var out = releases.of(episode.id()).stream()
                .filter(release -> release.publishedAt().isPresent())
                .count();
        return releases.current(episode.id()).flatMap(release -> catalog.find(episode.series())
                .map(found -> lesson(found, episode, release, out > 1)));
    }

    private PublishedLesson lesson(Series found, Episode episode, Release release, boolean corrected) {
        var out = release.publishedAt().orElseThrow();
        return PublishedLesson.of(found, episode, release, corrected, episodes.neighbours(episode), out);
    }
}
