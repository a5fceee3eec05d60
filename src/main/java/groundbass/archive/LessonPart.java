package groundbass.archive;

import com.fasterxml.jackson.databind.JsonNode;
import groundbass.archive.file.Entry;
import java.util.List;
import java.util.Objects;

/**
 * What only a program needs to know of a lesson, in {@code episode.json} of its folder; its schema is
 * {@code docs/archive/episode.schema.json}. All moments are RFC 3339. What is not so is not there: JSON has no empty
 * moments.
 *
 * @param format {@link ArchiveManifest#FORMAT}
 * @param series the id of its series
 * @param shown what lists showed of it
 * @param published when it first came out
 * @param saved when its draft was last saved; where it is not there, the lesson's own files say what its last revision says
 * @param revisions by number
 * @param releases those that were out, the newest first
 * @param files every other file of the folder
 */
record LessonPart(
        int format,
        String series,
        String id,
        int number,
        String slug,
        Shown shown,
        String created,
        String published,
        Withdrawn withdrawn,
        Promised promised,
        String saved,
        List<RevisionPart> revisions,
        List<RecordingPart> recordings,
        List<PicturePart> pictures,
        List<ReleasePart> releases,
        List<Entry> files) {
    /** Archives of earlier programs know of no pictures. */
    LessonPart {
        Objects.requireNonNull(series);
        Objects.requireNonNull(id);
        Objects.requireNonNull(shown);
        revisions = List.copyOf(revisions);
        recordings = List.copyOf(recordings);
        pictures = List.copyOf(Objects.requireNonNullElse(pictures, List.of()));
        releases = List.copyOf(releases);
        files = List.copyOf(files);
    }

    record Shown(String title, String level, String summary) {}

    /** That it was taken back from students. */
    record Withdrawn(String at, String why) {}

    /** The hour that it was to come out at, as it was promised: local, in a zone. */
    record Promised(String local, String zone) {}

    /** A document that was fixed; its files lie in a folder of its own. */
    record RevisionPart(String id, int number, String folder, String created, String note) {}

    /**
     * An uploaded recording.
     *
     * @param name what it was called where it came from
     */
    record RecordingPart(String id, String name, String file, String created) {}

    /**
     * A picture for the notes, which name it by its id.
     *
     * @param name what it was called where it came from
     * @param words that stand for it where it is not seen
     */
    record PicturePart(
            String id, String name, String words, String format, int wide, int high, String file, String created) {}

    /**
     * What readers got.
     *
     * @param madeOf all that its files depend on
     */
    record ReleasePart(
            String id,
            int number,
            String created,
            String published,
            String note,
            boolean noteByLetter,
            JsonNode madeOf,
            List<FilePart> files) {
        ReleasePart {
            files = List.copyOf(files);
        }
    }

    /**
     * A file of a release.
     *
     * @param file where it lies; equal files of a lesson lie there once
     */
    record FilePart(String name, String role, String mediaType, String file) {}
}
