package groundbass.audience.statistics;

import groundbass.audience.download.Download;
import groundbass.catalog.episode.EpisodeId;
import groundbass.post.EmailAddress;
import groundbass.text.Messages;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.function.Function;
import java.util.stream.Stream;

/**
 * Statistics as tables for a spreadsheet (RFC 4180, to be sent as UTF-8), headings in the educator's language, times in
 * the zone of the episode's series with their offset.
 */
public final class StatisticsCsv {
    private static final DateTimeFormatter TIME = DateTimeFormatter.ofPattern("uuuu-MM-dd'T'HH:mm:ssXXX", Locale.ROOT);

    private final Messages words;
    private final Function<EpisodeId, ZoneId> zone;
    private final Function<EpisodeId, String> title;

    /**
     * @param zone in which an episode's hours are told
     * @param title what to call an episode
     */
    public StatisticsCsv(Locale locale, Function<EpisodeId, ZoneId> zone, Function<EpisodeId, String> title) {
        this.words = Messages.of(locale);
        this.zone = zone;
        this.title = title;
    }

    /** For each episode a row over all its files, then a row for each file (whose students are not told apart). */
    public String episodes(List<EpisodeUse> episodes) {
        var rows = new ArrayList<List<String>>();
        rows.add(headings("episode", "file", "students", "downloads", "complete", "broken", "handed", "running"));
        episodes.forEach(episode -> rows.addAll(rows(episode)));
        return Csv.of(rows);
    }

    /** A row for each download: who, when, what, and how it ended. */
    public String taken(List<Taken> taken) {
        var rows = new ArrayList<List<String>>();
        rows.add(headings("student", "when", "episode", "release", "file", "state", "bytes"));
        taken.forEach(one -> rows.add(row(one)));
        return Csv.of(rows);
    }

    private List<String> headings(String... columns) {
        return Stream.of(columns)
                .map(column -> words.say("audience.csv." + column))
                .toList();
    }

    private List<List<String>> rows(EpisodeUse use) {
        String name = title.apply(use.episode());
        String all = words.say("audience.csv.allfiles");
        var rows = new ArrayList<List<String>>();
        rows.add(row(name, all, Long.toString(use.students()), use.downloads()));
        use.files().forEach(file -> rows.add(row(name, file.name(), "", file.downloads())));
        return rows;
    }

    private static List<String> row(String episode, String file, String students, DownloadCounts counts) {
        return List.of(
                episode,
                file,
                students,
                Long.toString(counts.all()),
                Long.toString(counts.complete()),
                Long.toString(counts.brokenOff()),
                Long.toString(counts.handedOver()),
                Long.toString(counts.running()));
    }

    private List<String> row(Taken taken) {
        Download download = taken.download();
        return List.of(
                taken.student().map(EmailAddress::value).orElseGet(() -> words.say("audience.csv.nobody")),
                time(download),
                title.apply(download.file().episode()),
                download.file().release(),
                download.file().name(),
                words.say(download.state().key()),
                Long.toString(download.bytesSent()));
    }

    private String time(Download download) {
        return TIME.format(
                download.startedAt().atZone(zone.apply(download.file().episode())));
    }
}
