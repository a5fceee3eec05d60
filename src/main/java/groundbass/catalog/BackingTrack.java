package groundbass.catalog;

import groundbass.store.Sha256;
import java.util.Locale;
import java.util.Objects;

/**
 * An uploaded recording that belongs to the episode.
 *
 * @param sha256 names the content, so that a revision stays what it was
 */
public record BackingTrack(UploadId upload, Sha256 sha256, String title, Kind kind) {
    /** What one hears on it. */
    public enum Kind {
        /** everything, the bass too */
        FULL,
        /** the band without the bass, to play along to */
        WITHOUT_BASS,
        /** drums alone */
        DRUMS,
        OTHER;

        /** The key of its name in the message bundle. */
        public String messageKey() {
            return "catalog.track." + name().toLowerCase(Locale.ROOT);
        }
    }

    public BackingTrack {
        Objects.requireNonNull(upload);
        Objects.requireNonNull(sha256);
        Objects.requireNonNull(title);
        Objects.requireNonNull(kind);
    }
}
