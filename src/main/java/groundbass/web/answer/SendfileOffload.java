package groundbass.web.answer;

import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.io.IOException;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;

/**
 * Lets a front server send stored files itself: it is told their place in the data folder, below {@code location}, in a
 * header that it takes away again.
 *
 * @param location an internal location of the front server's own, or the folder itself, as it wants to be told
 */
public record SendfileOffload(String location, String header) implements HandOver {
    /** The header that is meant where none is said. */
    public static final String USUAL_HEADER = "X-Accel-Redirect";

    public SendfileOffload {
        Objects.requireNonNull(location);
        Objects.requireNonNull(header);
        if (!location.startsWith("/") || !location.endsWith("/")) {
            throw new IllegalArgumentException("an internal location begins and ends with a slash: " + location);
        }
    }

    @Override
    public boolean leadsElsewhere() {
        return false;
    }

    @Override
    public Optional<Instead> instead(Context ctx, FileBody.Stored file, String mediaType, Optional<String> disposition)
            throws IOException {
        return file.blobs()
                .placeInFolder(file.sha256())
                .map(place -> new Instead(HttpStatus.OK, Map.of(header, location + place), true));
    }
}
