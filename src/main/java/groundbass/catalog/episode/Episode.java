package groundbass.catalog.episode;

import groundbass.catalog.series.SeriesId;
import groundbass.document.Level;
import groundbass.identity.Slug;
import java.time.Instant;
import java.util.Objects;
import java.util.Optional;

/**
 * One lesson of a series, as lists show it. What it says in full stands in its draft and its revisions.
 *
 * @param number its place in the series, from 1; unique there
 * @param slug   for file names and addresses, made from the title until it is published
 */
public record Episode(
        EpisodeId id,
        SeriesId series,
        int number,
        Slug slug,
        String title,
        Level level,
        String summary,
        EpisodeState state,
        Instant createdAt) {
    public Episode {
        Objects.requireNonNull(id);
        Objects.requireNonNull(series);
        if (number < 1) {
            throw new IllegalArgumentException("episode number below 1: " + number);
        }
        Objects.requireNonNull(slug);
        Objects.requireNonNull(title);
        Objects.requireNonNull(level);
        Objects.requireNonNull(summary);
        Objects.requireNonNull(state);
        Objects.requireNonNull(createdAt);
    }

    Episode withNumber(int other) {
        return new Episode(id, series, other, slug, title, level, summary, state, createdAt);
    }

    /** Whether it was ever brought out, also where it was taken back since. */
    public boolean isPublished() {
        return state instanceof EpisodeState.Published;
    }

    /** Whether students can have it now. */
    public boolean isOut() {
        return isPublished() && withdrawal().isEmpty();
    }

    public Optional<Withdrawal> withdrawal() {
        return state instanceof EpisodeState.Published published ? published.withdrawal() : Optional.empty();
    }

    public Optional<Instant> publishedAt() {
        return state instanceof EpisodeState.Published published ? Optional.of(published.firstAt()) : Optional.empty();
    }
}
