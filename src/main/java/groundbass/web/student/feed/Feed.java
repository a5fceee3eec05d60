package groundbass.web.student.feed;

import java.time.Instant;
import java.util.List;

/**
 * What is new in a series, before it is written in a format.
 *
 * @param id names the feed for good, wherever the site moves
 * @param author who teaches
 * @param language tag of the texts around the lessons
 * @param page where readers find the series
 * @param updated when anything here changed last
 */
record Feed(
        String id,
        String title,
        String summary,
        String author,
        String language,
        String page,
        Instant updated,
        List<Entry> entries) {
    Feed {
        entries = List.copyOf(entries);
    }

    /**
     * A lesson.
     *
     * @param id names it for good
     * @param link its permanent address
     * @param published when it came out, {@code updated} when it was corrected last
     * @param files to take home; none where that needs a sign-in
     */
    record Entry(
            String id,
            String title,
            String summary,
            String link,
            Instant published,
            Instant updated,
            List<Enclosure> files) {
        Entry {
            files = List.copyOf(files);
        }
    }

    /** A file that goes with a lesson; its size in bytes. */
    record Enclosure(String address, String mediaType, long size, String name, boolean sound) {}
}
