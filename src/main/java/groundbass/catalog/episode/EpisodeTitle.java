package groundbass.catalog.episode;

import java.util.Objects;

/**
 * What a lesson and its series are called today.
 *
 * @param published whether it was ever brought out, also where it was taken back since
 */
public record EpisodeTitle(EpisodeId episode, String title, String series, boolean published) {
    public EpisodeTitle {
        Objects.requireNonNull(episode);
        Objects.requireNonNull(title);
        Objects.requireNonNull(series);
    }
}
