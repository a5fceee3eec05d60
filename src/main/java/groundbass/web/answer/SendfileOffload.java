package groundbass.web.answer;

import java.nio.file.Path;
import java.util.Objects;

/**
 * Lets a front server send files of {@code root} itself: it is told their place below {@code location}, an internal
 * location of its own, in the header {@code X-Accel-Redirect}.
 */
public record SendfileOffload(Path root, String location) {
    public SendfileOffload {
        root = root.toAbsolutePath().normalize();
        Objects.requireNonNull(location);
        if (!location.startsWith("/") || !location.endsWith("/")) {
            throw new IllegalArgumentException("an internal location begins and ends with a slash: " + location);
        }
    }

    boolean covers(Path file) {
        return file.toAbsolutePath().normalize().startsWith(root);
    }

    String locationOf(Path file) {
        String relative = root.relativize(file.toAbsolutePath().normalize()).toString();
        return location + relative.replace('\\', '/');
    }
}
