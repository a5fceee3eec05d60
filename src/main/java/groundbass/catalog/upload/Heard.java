package groundbass.catalog.upload;

import groundbass.identity.Sha256;
import groundbass.listening.Loudness;
import java.util.Objects;

/** What is known of the sound of an uploaded recording. */
public sealed interface Heard {
    /** Nobody has listened yet. */
    record Waiting() implements Heard {}

    /** It cannot be decoded to its end. */
    record Broken() implements Heard {}

    /**
     * It was decoded.
     *
     * @param hearing names the kept file of its peaks and onsets
     */
    record Ready(Loudness loudness, Sha256 hearing) implements Heard {
        public Ready {
            Objects.requireNonNull(loudness);
            Objects.requireNonNull(hearing);
        }
    }
}
