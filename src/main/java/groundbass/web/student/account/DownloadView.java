package groundbass.web.student.account;

import static java.util.stream.Collectors.groupingBy;
import static java.util.stream.Collectors.mapping;
import static java.util.stream.Collectors.toSet;

import groundbass.audience.download.Download;
import groundbass.catalog.episode.Episode;
import groundbass.catalog.episode.EpisodeId;
import groundbass.catalog.episode.Episodes;
import groundbass.publishing.ReleaseChanges;
import groundbass.release.Releases;
import groundbass.text.Message;
import groundbass.web.view.Reader;
import java.time.Instant;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** Downloads as their student sees them. */
public final class DownloadView {
    private final Episodes episodes;
    private final Releases releases;
    private final ReleaseChanges changes;

    public DownloadView(Episodes episodes, Releases releases, ReleaseChanges changes) {
        this.episodes = episodes;
        this.releases = releases;
        this.changes = changes;
    }

    /**
     * One download.
     *
     * @param lesson the lesson's title; its name at the time is not kept
     * @param path   of the lesson
     * @param file   the file's name, and where to take it again
     * @param older  that it is of an earlier release, and the newer one was not taken
     */
    public record Row(
            String lesson,
            String path,
            String file,
            String filePath,
            Instant at,
            String state,
            Optional<ReleaseChanges.Older> older) {}

    List<Row> rows(List<Download> downloads, Reader reader) {
        Map<EpisodeId, String> titles = new HashMap<>();
        var older = older(downloads);
        return downloads.stream()
                .map(download ->
                        row(download, titles, reader, older.get(download.file().episode())))
                .toList();
    }

    /** Of which lessons the newest that was taken is not the one that is out. */
    private Map<EpisodeId, ReleaseChanges.Older> older(List<Download> downloads) {
        Map<EpisodeId, Set<String>> held = downloads.stream()
                .collect(groupingBy(
                        one -> one.file().episode(), mapping(one -> one.file().release(), toSet())));
        Map<EpisodeId, ReleaseChanges.Older> older = new HashMap<>();
        held.forEach((lesson, taken) -> releases.current(lesson)
                .flatMap(current -> changes.since(taken, current))
                .ifPresent(found -> older.put(lesson, found)));
        return older;
    }

    private Row row(Download download, Map<EpisodeId, String> titles, Reader reader, ReleaseChanges.Older older) {
        var file = download.file();
        String title = titles.computeIfAbsent(
                file.episode(), id -> episodes.find(id).map(Episode::title).orElse("\u2013"));
        return new Row(
                title,
                "/e/" + file.episode(),
                file.name(),
                "/files/" + file.release() + "/" + file.name(),
                download.startedAt(),
                reader.say(Message.of(download.state().key())),
                Optional.ofNullable(older));
    }
}
