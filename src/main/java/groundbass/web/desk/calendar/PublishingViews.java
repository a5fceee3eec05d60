package groundbass.web.desk.calendar;

import groundbass.catalog.educator.EducatorId;
import groundbass.catalog.episode.EpisodeId;
import groundbass.catalog.series.Series;
import groundbass.publishing.HourWatch;
import groundbass.publishing.LessonLook;
import groundbass.publishing.Publisher;
import groundbass.publishing.SiteLook;
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

    /** To look at all the lessons of one page. */
    public SiteLook look() {
        return publisher.look();
    }

    /**
     * Where it stands with all of its releases.
     *
     * @param differs what the look says of it
     */
    public ReleaseCalendar calendar(LessonLook look, Series series, Reader reader, Optional<Message> differs) {
        return ReleaseCalendar.of(look, series, releases, reader).with(troubles(look), differs);
    }

    /** Where it stands, in a line or two. */
    public EpisodeStatus standing(LessonLook look, Reader reader) {
        return EpisodeStatus.of(look.episode(), look.latest(), reader);
    }

    /** What is in the way of its hour, beside a build that failed, which {@link EpisodeStatus} says. */
    public List<Message> troubles(LessonLook look) {
        return watch.troubles(look).stream()
                .filter(trouble -> trouble.kind() != Trouble.Kind.FAILED)
                .map(Trouble::sentence)
                .toList();
    }

    /** Whose drafts may differ from what is fixed: the others need not be compared. */
    public List<EpisodeId> writtenSince(EducatorId who) {
        return releases.writtenSince(who);
    }
}
