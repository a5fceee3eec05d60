package groundbass.demo;

import groundbass.audience.download.ReleasedFile;
import groundbass.catalog.episode.Episode;
import groundbass.demo.DemoAudience.Visits;
import groundbass.release.Release;
import groundbass.release.ReleaseFile;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.List;

/**
 * A line of {@code downloads.csv}: how often a file was taken in one week. seed-data/README.md gives its form.
 *
 * @param episode the episode's folder
 * @param file {@code bundle}, or a file's name in the release
 */
record DemoDownloads(String episode, int weeksAgo, String file, int byStudents, int anonymous, int brokenOff) {
    private static final String NAME = "downloads.csv";
    private static final int COLUMNS = 6;

    /** All lines of the series' folder; none where it has no such file. */
    static List<DemoDownloads> read(Path series) {
        var file = series.resolve(NAME);
        if (!Files.exists(file)) {
            return List.of();
        }
        try (var lines = Files.lines(file)) {
            return lines.filter(line -> !line.isBlank() && !line.startsWith("#"))
                    .skip(1) // the names of the columns
                    .map(DemoDownloads::line)
                    .toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static DemoDownloads line(String line) {
        var cells = line.split(",", -1);
        if (cells.length != COLUMNS) {
            throw new IllegalArgumentException("not a line of " + NAME + ": " + line);
        }
        return new DemoDownloads(
                cells[0],
                Integer.parseInt(cells[1]),
                cells[2],
                Integer.parseInt(cells[3]),
                Integer.parseInt(cells[4]),
                Integer.parseInt(cells[5]));
    }

    /** The same as visits to a release: after the episode came out and before now. */
    Visits visits(Episode episode, Release release, List<ReleaseFile> files, Instant now) {
        var taken = files.stream().filter(this::isMeant).findFirst().orElseThrow(() -> noFile(files));
        var from =
                latest(DemoCalendar.week(now, weeksAgo), episode.publishedAt().orElseThrow());
        var end = earliest(DemoCalendar.week(now, weeksAgo - 1), now);
        return new Visits(
                new ReleasedFile(release.id().value(), episode.id(), taken.name(), taken.size()),
                from,
                latest(from, end),
                byStudents,
                anonymous,
                brokenOff);
    }

    private boolean isMeant(ReleaseFile one) {
        return file.equals("bundle") ? one.role().isBundle() : one.name().equals(file);
    }

    private IllegalArgumentException noFile(List<ReleaseFile> files) {
        var names = files.stream().map(ReleaseFile::name).toList();
        return new IllegalArgumentException(NAME + ": " + episode + " has no file " + file + " among " + names);
    }

    private static Instant latest(Instant one, Instant other) {
        return one.isAfter(other) ? one : other;
    }

    private static Instant earliest(Instant one, Instant other) {
        return one.isBefore(other) ? one : other;
    }
}
