package groundbass.release;

import com.github.benmanes.caffeine.cache.Cache;
import com.github.benmanes.caffeine.cache.Caffeine;
import groundbass.effort.ClockTicker;
import groundbass.effort.ConcurrencyLimit;
import groundbass.release.play.ExactStems;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.Clock;
import java.time.Duration;
import java.util.List;
import java.util.Optional;

/**
 * What a page plays, without loss, for the few browsers that cannot decode the smaller form: made when one of them asks.
 * These files belong to no release. They lie among the stored files for about a day and are made again after that, so a site
 * keeps no more of them than is wanted. Thread-safe.
 */
public final class StemsOnRequest {
    /** Less than what {@link MadeAudio} leaves of the day for which a file stays that no row names. */
    private static final Duration KNOWN = Duration.ofHours(2);

    private static final int MOST = 500;
    private static final int WAITING = 12;
    private static final Duration PATIENCE = Duration.ofSeconds(20);

    private final ReleaseBuilder builder;
    private final ConcurrencyLimit machine = new ConcurrencyLimit(1, WAITING, PATIENCE);
    private final Cache<Wanted, List<ReleaseFile>> known;

    private record Wanted(ReleaseId release, ExactStems stems) {}

    public StemsOnRequest(ReleaseBuilder builder, Clock clock) {
        this.builder = builder;
        this.known = Caffeine.newBuilder()
                .maximumSize(MOST)
                .ticker(new ClockTicker(clock))
                .expireAfterWrite(KNOWN)
                .build();
    }

    /** Whether a file of this name is made here, if anywhere. */
    public static boolean makes(String name) {
        return ExactStems.of(name).isPresent();
    }

    /**
     * A manifest of one tempo, or a stem that it names; empty where the release plays no such line or tempo.
     *
     * @throws groundbass.effort.Busy where too many wait for theirs
     */
    public Optional<ReleaseFile> find(Release release, String name) {
        if (!release.spec().has(Feature.SMALL_SOUND)) {
            return Optional.empty();
        }
        return ExactStems.of(name).flatMap(stems -> files(release, stems).stream()
                .filter(file -> file.name().equals(name))
                .findFirst());
    }

    private List<ReleaseFile> files(Release release, ExactStems stems) {
        var wanted = new Wanted(release.id(), stems);
        var here = known.getIfPresent(wanted);
        return here != null ? here : machine.take(() -> known.get(wanted, any -> made(release, stems)));
    }

    private List<ReleaseFile> made(Release release, ExactStems stems) {
        try {
            return builder.exact(release, stems);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
