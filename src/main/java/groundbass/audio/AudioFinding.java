package groundbass.audio;

import java.util.List;
import java.util.Objects;

/** What a file turned out to be. */
public sealed interface AudioFinding {
    /** A whole recording of a kind that is taken. */
    record Audio(AudioFacts facts) implements AudioFinding {
        public Audio {
            Objects.requireNonNull(facts);
        }
    }

    /**
     * Something else, or a recording that is broken.
     *
     * @param key  a key of the message bundle
     * @param args what the message is filled with
     */
    record Refused(String key, List<Object> args) implements AudioFinding {
        public Refused {
            Objects.requireNonNull(key);
            args = List.copyOf(args);
        }
    }

    static AudioFinding refused(String key, Object... args) {
        return new Refused("catalog.audio." + key, List.of(args));
    }
}
