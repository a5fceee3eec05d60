package groundbass.web.view;

import java.time.ZonedDateTime;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * An episode in a list. {@code path} leads to its page; {@code published} is in the zone of the
 * series, and missing while it is not out;
 * {@code language} is that of its title, empty where it is not known; {@code techniques} are words as they are shown; {@code picture} is missing where its release was made without one.
 */
public record EpisodeCard(
        String path,
        int number,
        String title,
        String series,
        String language,
        String level,
        List<String> techniques,
        Optional<ZonedDateTime> published,
        Optional<Picture> picture) {
    /** Paths of its first bars: in dark ink, and in light ink for dark pages. */
    public record Picture(String day, String night) {}

    public EpisodeCard {
        Objects.requireNonNull(path);
        Objects.requireNonNull(title);
        Objects.requireNonNull(series);
        Objects.requireNonNull(language);
        Objects.requireNonNull(level);
        techniques = List.copyOf(techniques);
        Objects.requireNonNull(published);
        Objects.requireNonNull(picture);
    }
}
