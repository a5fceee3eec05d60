package groundbass.web.student.account;

import groundbass.audience.download.Download;
import groundbass.catalog.episode.Episode;
import groundbass.catalog.episode.EpisodeId;
import groundbass.catalog.episode.Episodes;
import groundbass.text.Message;
import groundbass.web.view.Reader;
import java.time.Instant;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** Downloads as their student sees them. */
public final class DownloadView {
    private final Episodes episodes;

    public DownloadView(Episodes episodes) {
        this.episodes = episodes;
    }

    /**
     * One download.
     *
     * @param lesson the lesson's title; its name at the time is not kept
     * @param path   of the lesson
     * @param file   the file's name, and where to take it again
     */
    public record Row(String lesson, String path, String file, String filePath, Instant at, String state) {}

    List<Row> rows(List<Download> downloads, Reader reader) {
        Map<EpisodeId, String> titles = new HashMap<>();
        return downloads.stream().map(download -> row(download, titles, reader)).toList();
    }

    private Row row(Download download, Map<EpisodeId, String> titles, Reader reader) {
        var file = download.file();
        String title = titles.computeIfAbsent(
                file.episode(), id -> episodes.find(id).map(Episode::title).orElse("\u2013"));
        return new Row(
                title,
                "/e/" + file.episode(),
                file.name(),
                "/files/" + file.release() + "/" + file.name(),
                download.startedAt(),
                reader.say(Message.of(download.state().key())));
    }
}
