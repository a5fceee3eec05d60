package groundbass.demo;

import groundbass.archive.WrittenSeries;
import groundbass.catalog.educator.EducatorId;
import groundbass.catalog.educator.Educators;
import groundbass.catalog.episode.Episode;
import groundbass.catalog.episode.Episodes;
import groundbass.catalog.series.Series;
import groundbass.catalog.settings.Imprint;
import groundbass.catalog.settings.Settings;
import groundbass.demo.DemoAudience.Visits;
import groundbass.release.Release;
import groundbass.release.Releases;
import groundbass.store.RandomId;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URISyntaxException;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import org.jdbi.v3.core.Jdbi;

/**
 * The demonstration: an invented studio, its series from {@code seed-data/}, and an invented audience. All of it comes
 * in through the doors that an educator's own import uses, and all of it is marked.
 */
public final class Demo {
    /** RFC 2606 section 2 keeps this name from ever being a real address. */
    private static final String EMAIL = "studio@demo.invalid";

    private static final String STUDIO = "Saltlantern Studio (demo)";
    private static final String WORDS =
            "An invented studio for a demonstration; nobody reads what is sent to this address.";
    private static final String FOLDER = "/seed-data";

    private final Jdbi jdbi;
    private final Clock clock;
    private final Educators educators;
    private final Settings settings;
    private final Episodes episodes;
    private final Releases releases;
    private final SeriesImport incoming;

    public Demo(
            Jdbi jdbi,
            Clock clock,
            Educators educators,
            Settings settings,
            Episodes episodes,
            Releases releases,
            SeriesImport incoming) {
        this.jdbi = jdbi;
        this.clock = clock;
        this.educators = educators;
        this.settings = settings;
        this.episodes = episodes;
        this.releases = releases;
        this.incoming = incoming;
    }

    /** How to get to the demo's desk. */
    public record Invitation(String email, String password) {}

    /** Makes the studio where there is no educator yet; the password is told this once. */
    public Optional<Invitation> openStudio() {
        if (educators.owner().isPresent()) {
            return Optional.empty();
        }
        var invitation = new Invitation(EMAIL, RandomId.next());
        var made = educators
                .create(STUDIO, invitation.email(), invitation.password())
                .result();
        made.ifPresent(studio -> settings.saveImprint(studio.id(), new Imprint(STUDIO, EMAIL, WORDS, "", "")));
        return made.map(studio -> invitation);
    }

    /** Loads what is not there yet; takes as long as building its releases takes. */
    public void load() {
        var owner = educators.owner().orElseThrow().id();
        var visits = load(owner).stream().flatMap(this::visits).toList();
        DemoAudience.invent(jdbi, visits);
    }

    /** A series that is in, and how its files were taken. */
    private record Loaded(Series series, List<WrittenSeries.Lesson> lessons, List<DemoDownloads> downloads) {
        /** An episode's number by its folder: its place among the folders. */
        int number(String folder) {
            var folders = lessons.stream().map(WrittenSeries.Lesson::folder).toList();
            return folders.indexOf(folder) + 1;
        }
    }

    private List<Loaded> load(EducatorId owner) {
        return withSeedData(folder -> {
            try (var children = Files.list(folder)) {
                return children.filter(Files::isDirectory)
                        .sorted()
                        .map(series -> load(owner, series))
                        .toList();
            }
        });
    }

    private Loaded load(EducatorId owner, Path folder) {
        var content = written(folder);
        return new Loaded(incoming.run(owner, content), content.lessons(), DemoDownloads.read(folder));
    }

    static WrittenSeries written(Path folder) {
        try {
            return WrittenSeries.read(folder);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private Stream<Visits> visits(Loaded loaded) {
        return loaded.downloads().stream()
                .flatMap(line -> visits(loaded.series(), loaded.number(line.episode()), line).stream());
    }

    private Optional<Visits> visits(Series series, int number, DemoDownloads line) {
        return episodes.find(series.slug(), number)
                .flatMap(episode -> releases.current(episode.id()).map(release -> visits(line, episode, release)));
    }

    private Visits visits(DemoDownloads line, Episode episode, Release release) {
        return line.visits(episode, release, releases.files().of(release.id()), clock.instant());
    }

    @FunctionalInterface
    interface Reading<T> {
        T from(Path folder) throws IOException;
    }

    /** The files lie in the jar, which one at a time can open so, or in a folder while developing. */
    static synchronized <T> T withSeedData(Reading<T> reading) {
        try {
            var address = Demo.class.getResource(FOLDER).toURI();
            if (!address.getScheme().equals("jar")) {
                return reading.from(Path.of(address));
            }
            try (var jar = FileSystems.newFileSystem(address, Map.of())) {
                return reading.from(jar.getPath(FOLDER));
            }
        } catch (URISyntaxException e) {
            throw new IllegalStateException(e);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
