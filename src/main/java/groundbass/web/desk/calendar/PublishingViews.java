package groundbass.web.desk.calendar;

import groundbass.catalog.educator.EducatorId;
import groundbass.catalog.episode.Episode;
import groundbass.catalog.episode.EpisodeId;
import groundbass.catalog.series.Series;
import groundbass.publishing.HourWatch;
import groundbass.publishing.Publisher;
import groundbass.publishing.Trouble;
import groundbass.release.Releases;
import groundbass.text.Message;
import groundbass.web.view.Reader;
import java.util.List;
import java.util.Optional;

/** What the desk shows of an episode on its way to the students. */
public final class PublishingViews {
    private final Releases releases;
    private final Publisher publisher;
    private final HourWatch watch;

    public PublishingViews(Releases releases, Publisher publisher, HourWatch watch) {
        this.releases = releases;
        this.publisher = publisher;
        this.watch = watch;
    }

    /**
     * Where it stands with all of its releases.
     *
     * @param differs what {@link #differs} says of it, or a verdict
     */
    public ReleaseCalendar calendar(Episode episode, Series series, Reader reader, Optional<Message> differs) {
        return ReleaseCalendar.of(episode, series, releases, reader).with(troubles(episode), differs);
    }

    /** Where it stands, in a line or two. */
    public EpisodeStatus standing(Episode episode, Reader reader) {
        return EpisodeStatus.of(episode, releases.latest(episode.id()), reader);
    }

    /** What is in the way of its hour, beside a build that failed, which {@link EpisodeStatus} says. */
    public List<Message> troubles(Episode episode) {
        return watch.troubles(episode).stream()
                .filter(trouble -> trouble.kind() != Trouble.Kind.FAILED)
                .map(Trouble::sentence)
                .toList();
    }

    /** Whose drafts may differ from what is fixed: the others need not be compared. */
    public List<EpisodeId> writtenSince(EducatorId who) {
        return releases.writtenSince(who);
    }

    /** In what its draft differs from what readers see or will see; empty where it does not. */
    public Optional<Message> differs(EducatorId who, Episode episode) {
        return publisher.differs(who, episode);
    }

    /** What is to be said of the saved draft before it goes out. */
    public Publisher.Verdict verdict(EducatorId who, Episode episode) {
        return publisher.verdict(who, episode.id());
    }
}
