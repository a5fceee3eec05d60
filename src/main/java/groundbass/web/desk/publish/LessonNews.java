package groundbass.web.desk.publish;

import groundbass.audience.news.NewsQueue;
import groundbass.catalog.episode.Episode;
import groundbass.catalog.series.Series;
import groundbass.document.EpisodeDocument;
import groundbass.publishing.Announcement;
import groundbass.publishing.Announcer;
import java.util.Locale;
import java.util.Optional;

/** What is told of a lesson that is out: by letters, and to be copied elsewhere. */
public final class LessonNews {
    private final Announcer announcer;
    private final NewsQueue queue;

    public LessonNews(Announcer announcer, NewsQueue queue) {
        this.announcer = announcer;
        this.queue = queue;
    }

    /** @param letters how many are written and still to be; those of a month */
    public record Told(Announcement news, NewsQueue.Told letters) {}

    int holders(Episode lesson) {
        return queue.holders(lesson.series(), lesson.id());
    }

    String belowVideo(Episode lesson, EpisodeDocument said) {
        return announcer.belowVideo(lesson, said);
    }

    Optional<Told> of(Series series, Episode lesson, Locale locale) {
        return Optional.of(lesson)
                .filter(Episode::isOut)
                .map(out -> new Told(announcer.of(series, out, locale), queue.told(out.id())));
    }
}
