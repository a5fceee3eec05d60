package groundbass.web.statistics;

import groundbass.catalog.episode.EpisodeId;
import groundbass.lesson.PageContent;
import groundbass.lesson.PageContent.LineContent;
import groundbass.lesson.PageContent.Picture;
import groundbass.release.FileRole;
import groundbass.release.PageJson;
import groundbass.release.ReleaseFile;
import groundbass.release.Releases;
import groundbass.store.Blobs;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.IntStream;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** The lines of a lesson as readers get them now, so that figures can stand on their sheets. */
final class ReleasedLines {
    private static final Logger log = LoggerFactory.getLogger(ReleasedLines.class);

    private final Releases releases;
    private final Blobs blobs;

    ReleasedLines(Releases releases, Blobs blobs) {
        this.releases = releases;
        this.blobs = blobs;
    }

    /**
     * A line.
     *
     * @param name as statistics call it: {@code line}, {@code exercise-1}
     * @param pictures the names of its drawings, the narrowest first
     */
    record Line(String name, String title, List<String> pictures) {
        private static Line of(int place, LineContent line) {
            var names = line.pictures().stream().map(Picture::file).toList();
            return new Line(place == 0 ? "line" : "exercise-" + place, line.title(), names);
        }
    }

    /** The number, the files and the page of one release. */
    record Found(ReleasedLines home, int number, List<ReleaseFile> files, Optional<PageContent> page) {
        List<Line> lines() {
            var lines = page.map(PageContent::lines).orElse(List.of());
            return IntStream.range(0, lines.size())
                    .mapToObj(place -> Line.of(place, lines.get(place)))
                    .toList();
        }

        /** How a course is called that the page names by this address. */
        Optional<String> course(String address) {
            return page.stream()
                    .flatMap(content -> content.courses().stream())
                    .filter(course -> course.address().equals(address))
                    .map(PageContent.CourseContent::title)
                    .findFirst();
        }

        /** The drawing, made by our own renderer; empty where its file is damaged or missing. */
        Optional<String> drawing(String name) {
            return files.stream()
                    .filter(file -> file.name().equals(name))
                    .findFirst()
                    .flatMap(home::text);
        }
    }

    /** What the release says that readers of a lesson get, or got before it was taken back; no page where it cannot be read. */
    Found of(EpisodeId lesson) {
        var current = releases.current(lesson);
        var files = current.map(release -> releases.files().of(release.id())).orElse(List.of());
        var page = files.stream()
                .filter(file -> file.role() == FileRole.PAGE)
                .flatMap(file -> page(file).stream())
                .findFirst();
        int number = current.map(release -> release.spec().release()).orElse(0);
        return new Found(this, number, files, page);
    }

    private Optional<PageContent> page(ReleaseFile file) {
        return read(file, PageJson::read);
    }

    private Optional<String> text(ReleaseFile file) {
        return read(file, bytes -> new String(bytes, StandardCharsets.UTF_8));
    }

    private <T> Optional<T> read(ReleaseFile file, Function<byte[], T> reading) {
        try (var in = blobs.open(file.sha256())) {
            return Optional.of(reading.apply(in.readAllBytes()));
        } catch (IOException | UncheckedIOException e) {
            log.error("figures are shown without {}", file.name(), e);
            return Optional.empty();
        }
    }
}
