package groundbass.document;

import groundbass.identity.Sha256;
import java.util.Locale;
import java.util.Objects;

/**
 * An uploaded recording that belongs to the episode.
 *
 * @param sha256 names the content, so that a revision stays what it was
 * @param map when each bar begins in it
 */
public record BackingTrack(UploadId upload, Sha256 sha256, String title, Kind kind, BarMap map) {
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
        map = map == null ? BarMap.NONE : map; // documents of earlier programs have none
    }

    /** A recording of which nobody has said yet when its bars begin. */
    public BackingTrack(UploadId upload, Sha256 sha256, String title, Kind kind) {
        this(upload, sha256, title, kind, BarMap.NONE);
    }

    public BackingTrack withMap(BarMap changed) {
        return new BackingTrack(upload, sha256, title, kind, changed);
    }
}
