package groundbass.archive;

import groundbass.archive.file.ArchiveLimits;
import groundbass.archive.file.DamagedFile;

/** What may still come: asked after each list, so that what is too much is not held first. */
final class ImportBounds {
    private final ArchiveLimits limits;
    private long left;

    /** @param most bytes */
    ImportBounds(ArchiveLimits limits, long most) {
        this.limits = limits;
        this.left = Math.min(most, limits.bytes());
    }

    /** @param length of the lesson's list, in characters: it has at least as many bytes */
    void take(LessonPart lesson, int length) throws DamagedFile {
        var files = lesson.files();
        if (files.size() > limits.filesOfALesson()) {
            throw DamagedFile.of("archive.problem.many", files.size(), limits.filesOfALesson());
        }
        take(length);
        for (var entry : files) {
            take(entry.size());
        }
    }

    private void take(long bytes) throws DamagedFile {
        if (bytes > left) {
            throw DamagedFile.of("archive.problem.large");
        }
        left -= bytes;
    }
}
