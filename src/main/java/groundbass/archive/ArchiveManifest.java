package groundbass.archive;

import groundbass.archive.file.Entry;
import java.util.List;
import java.util.Objects;

/**
 * What an archive says of itself, in {@code manifest.json}; its schema is {@code docs/archive/manifest.schema.json}.
 *
 * @param format of the archive; {@link #FORMAT} is what this program writes
 * @param made when, as RFC 3339
 * @param files those that belong to no lesson
 * @param missing files that the site had lost when it was written, by their names in the archive
 */
record ArchiveManifest(
        int format, String made, SeriesPart series, List<Entry> files, List<LessonPart> lessons, List<String> missing) {
    static final int FORMAT = 1;

    ArchiveManifest {
        Objects.requireNonNull(series);
        files = List.copyOf(files);
        lessons = List.copyOf(lessons);
        missing = List.copyOf(missing);
    }

    /** @param created when, as RFC 3339 */
    record SeriesPart(String id, String created) {}

    /**
     * A lesson, in the order of the series.
     *
     * @param list the file in its folder that lists all others of it
     */
    record LessonPart(String folder, String id, int number, String title, Entry list) {
        LessonPart {
            Objects.requireNonNull(folder);
            Objects.requireNonNull(list);
        }
    }
}
