package groundbass.publishing;

import groundbass.audience.DemoAudience;
import groundbass.audience.DemoAudience.Offer;
import groundbass.audience.ReleasedFile;
import groundbass.catalog.EducatorId;
import groundbass.catalog.Educators;
import groundbass.catalog.Episode;
import groundbass.catalog.Episodes;
import groundbass.catalog.Series;
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
import org.jdbi.v3.core.Jdbi;

/**
 * The demonstration: an invented studio, its series from {@code seed-data/}, and an invented audience. All of it comes
 * in through the doors that an educator's own import uses, and all of it is marked.
 */
public final class Demo {
    /** RFC 2606 section 2 keeps this name from ever being a real address. */
    private static final String EMAIL = "studio@demo.invalid";

    private static final String STUDIO = "Saltlantern Studio (demo)";
    private static final String FOLDER = "/seed-data";

    private final Jdbi jdbi;
    private final Clock clock;
    private final Educators educators;
    private final Episodes episodes;
    private final Releases releases;
    private final SeriesImport incoming;

    public Demo(Jdbi jdbi, Clock clock, Educators educators, Releases releases, SeriesImport incoming) {
        this.jdbi = jdbi;
        this.clock = clock;
        this.educators = educators;
        this.episodes = new Episodes(jdbi);
        this.releases = releases;
        this.incoming = incoming;
    }

    /** How to get to the demo's desk. */
    public record Invitation(String email, String password) {}

    /** Makes the studio where there is no educator yet; the password is told this once. */
    public Optional<Invitation> openStudio() {
        if (educators.first().isPresent()) {
            return Optional.empty();
        }
        var invitation = new Invitation(EMAIL, RandomId.next());
        return educators
                .create(STUDIO, invitation.email(), invitation.password())
                .result()
                .map(made -> invitation);
    }

    /** Loads what is not there yet; takes as long as building its releases takes. */
    public void load() {
        var owner = educators.first().orElseThrow().id();
        for (var series : load(owner)) {
            DemoAudience.invent(jdbi, offers(series), clock.instant());
        }
    }

    private List<Series> load(EducatorId owner) {
        return withSeedData(folder -> {
            try (var children = Files.list(folder)) {
                return children.filter(Files::isDirectory)
                        .sorted()
                        .map(series -> incoming.run(owner, SeriesFolder.read(series)))
                        .toList();
            }
        });
    }

    private List<Offer> offers(Series series) {
        return episodes.publishedIn(series.id()).stream()
                .flatMap(episode -> releases.current(episode.id()).map(release -> offer(episode, release)).stream())
                .toList();
    }

    private Offer offer(Episode episode, Release release) {
        var files = releases.files(release.id()).stream()
                .filter(file -> file.role().isOffered())
                .map(file -> new ReleasedFile(release.id().value(), episode.id(), file.name(), file.size()))
                .toList();
        return new Offer(episode.publishedAt().orElseThrow(), files);
    }

    @FunctionalInterface
    private interface Reading<T> {
        T from(Path folder) throws IOException;
    }

    /** The files lie in the jar, or in a folder while developing. */
    private static <T> T withSeedData(Reading<T> reading) {
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
