package groundbass.web.answer;

import java.util.Objects;

/**
 * Lets a front server send stored files itself: it is told their place in the data folder, below {@code location}, an
 * internal location of its own, in the header {@code X-Accel-Redirect}.
 */
public record SendfileOffload(String location) {
    public SendfileOffload {
        Objects.requireNonNull(location);
        if (!location.startsWith("/") || !location.endsWith("/")) {
            throw new IllegalArgumentException("an internal location begins and ends with a slash: " + location);
        }
    }

    String locationOf(String place) {
        return location + place;
    }
}
