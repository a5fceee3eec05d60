package groundbass.archive.file;

import java.time.DateTimeException;
import java.time.Instant;
import java.util.Optional;

/** Moments as JSON from outside says them. */
public final class JsonMoments {
    private static final Instant FIRST = Instant.parse("1970-01-01T00:00:00Z");
    private static final Instant LAST = Instant.parse("2200-01-01T00:00:00Z");

    private JsonMoments() {}

    public static Instant read(String text) throws DamagedFile {
        try {
            return Optional.ofNullable(text)
                    .map(Instant::parse)
                    .filter(at -> !at.isBefore(FIRST) && at.isBefore(LAST))
                    .orElseThrow(() -> DamagedFile.of("archive.problem.json"));
        } catch (DateTimeException e) {
            throw DamagedFile.of("archive.problem.json");
        }
    }
}
