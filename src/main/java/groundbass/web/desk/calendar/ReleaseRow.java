package groundbass.web.desk.calendar;

import groundbass.release.Release;
import groundbass.release.ReleaseFile;
import groundbass.text.Message;
import java.time.Instant;
import java.util.List;
import java.util.Optional;

/**
 * A release as the desk lists it.
 *
 * @param done how many steps are done, of {@code total}; both 0 while nobody has begun
 */
public record ReleaseRow(
        int number,
        Instant made,
        Optional<Instant> published,
        Message state,
        boolean failed,
        boolean building,
        int done,
        int total,
        List<FileRow> files) {
    /** A file to look at. */
    public record FileRow(String path, String name, long size) {}

    static ReleaseRow of(Release release, List<ReleaseFile> files) {
        var progress = Progress.of(release.state());
        var rows = files.stream()
                .filter(file -> file.role().isOffered())
                .map(file -> new FileRow("/files/" + release.id() + "/" + file.name(), file.name(), file.size()))
                .toList();
        return new ReleaseRow(
                release.recipe().release(),
                release.createdAt(),
                release.publishedAt(),
                Standing.work(release.state()),
                release.isFailed(),
                progress.running(),
                progress.done(),
                progress.total(),
                rows);
    }
}
