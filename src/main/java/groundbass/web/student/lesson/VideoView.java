package groundbass.web.student.lesson;

import java.net.URI;
import java.util.Optional;

/**
 * A video on another site. Nothing is asked of that site before the student presses the button.
 *
 * @param address of the video
 * @param origin  scheme and host of that address: what the page may frame
 * @param host    as the student reads it
 */
public record VideoView(String address, String origin, String host) {
    static Optional<VideoView> of(String address) {
        if (address.isEmpty()) {
            return Optional.empty();
        }
        var uri = URI.create(address);
        String port = uri.getPort() == -1 ? "" : ":" + uri.getPort();
        return Optional.of(new VideoView(address, uri.getScheme() + "://" + uri.getHost() + port, uri.getHost()));
    }
}
