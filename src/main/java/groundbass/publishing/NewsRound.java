package groundbass.publishing;

import groundbass.audience.news.NewsQueue;
import groundbass.audience.news.QueuedLetter;
import groundbass.catalog.episode.Episode;
import groundbass.catalog.series.Series;
import groundbass.post.Outbox;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Writes the letters that wait to be written, a few at a time, so that neither the mail server nor a letter to one person
 * has to wait for many of them. A pass may be cut short anywhere: what is marked as written lies in the outbox.
 */
public final class NewsRound {
    /** How many letters to lists are on their way at once at most. */
    static final int A_STEP = 40;

    /** So long one that could not be written is passed over. */
    private static final Duration PAUSE = Duration.ofMinutes(10);

    private static final Logger log = LoggerFactory.getLogger(NewsRound.class);

    private final PublishingParts parts;
    private final NewsQueue queue;
    private final Announcer announcer;
    private final Outbox outbox;
    /** What this server could not write, and when it tries again. */
    private final Map<QueuedLetter, Instant> passedOver = new ConcurrentHashMap<>();

    public NewsRound(PublishingParts parts, NewsQueue queue, Announcer announcer, Outbox outbox) {
        this.parts = parts;
        this.queue = queue;
        this.announcer = announcer;
        this.outbox = outbox;
    }

    /** One pass. @return how many letters were written */
    public int pass() {
        int room = A_STEP - outbox.listLettersUnderWay();
        int written = 0;
        if (room > 0) {
            for (var letter : next(room)) {
                written += attempt(letter) ? 1 : 0;
            }
        }
        if (written > 0) {
            log.info("{} letters of news were written", written);
        }
        return written;
    }

    private List<QueuedLetter> next(int room) {
        passedOver.values().removeIf(again -> !again.isAfter(parts.clock.instant()));
        return queue.waiting(room + passedOver.size()).stream()
                .filter(letter -> !passedOver.containsKey(letter))
                .limit(room)
                .toList();
    }

    /** One that cannot be written does not hold up the others; it is tried again after a while. */
    private boolean attempt(QueuedLetter letter) {
        try {
            return write(letter);
        } catch (RuntimeException e) {
            log.error("A letter about {} could not be written", letter.about(), e);
            passedOver.put(letter, parts.clock.instant().plus(PAUSE));
            return false;
        }
    }

    private boolean write(QueuedLetter letter) {
        return parts.jdbi.inTransaction(handle -> {
            // a letter about a lesson that is taken back waits until it is put back, so it is taken last
            var told = lesson(letter).filter(lesson -> queue.take(handle, letter));
            told.ifPresent(lesson -> outbox.put(announcer.letter(lesson.series(), lesson.episode(), letter)));
            return told.isPresent();
        });
    }

    private record Lesson(Series series, Episode episode) {}

    /** Empty where it was taken back since it was asked for: nobody is told of it then. */
    private Optional<Lesson> lesson(QueuedLetter letter) {
        return parts.episodes.find(letter.episode()).filter(Episode::isOut).flatMap(episode -> parts.catalog
                .find(episode.series())
                .map(series -> new Lesson(series, episode)));
    }
}
