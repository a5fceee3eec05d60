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
 * @param preview where its page is seen as students see it; empty while there is nothing to see
 * @param shown whether it is the one that readers see
 * @param done how many steps are done, of {@code total}; both 0 while nobody has begun
 */
public record ReleaseRow(
        int number,
        Optional<String> preview,
        Instant made,
        Optional<Instant> published,
        Message state,
        boolean shown,
        boolean failed,
        boolean building,
        int done,
        int total,
        List<FileRow> files) {
    /** A file to look at; the educator's own look is no download. */
    public record FileRow(String path, String name, long size) {}

    /** @param current the number of the release that readers see; 0 where they see none */
    static ReleaseRow of(Release release, int current, List<ReleaseFile> files) {
        int number = release.spec().release();
        boolean overtaken = release.publishedAt().isEmpty() && number < current;
        var progress = BuildProgress.of(release.state());
        String preview = "/preview/" + release.id();
        var rows = files.stream()
                .filter(file -> file.role().isOffered())
                .map(file -> new FileRow(preview + "/files/" + file.name(), file.name(), file.size()))
                .toList();
        return new ReleaseRow(
                number,
                Optional.of(preview).filter(any -> release.isReady()),
                release.createdAt(),
                release.publishedAt(),
                overtaken ? Message.of("desk.build.overtaken") : EpisodeStatus.work(release.state()),
                number == current,
                release.isFailed(),
                progress.running(),
                progress.done(),
                progress.total(),
                rows);
    }
}
