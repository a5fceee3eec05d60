package groundbass.score;

import java.util.Objects;
import java.util.OptionalInt;

/**
 * How the fretting hand comes to a note: from the note played before it on the same string, or from a grace note at a
 * fret of its own.
 *
 * @param graceFret where the grace note is fretted; empty where the note before it is the source
 */
public record Arrival(Kind kind, OptionalInt graceFret) {
    /** The hand's movement. */
    public enum Kind {
        HAMMER("hammer"),
        PULL("pull"),
        SLIDE("slide");

        private final String word;

        Kind(String word) {
            this.word = word;
        }

        /** The word that line text uses. */
        public String word() {
            return word;
        }
    }

    public Arrival {
        Objects.requireNonNull(kind);
        if (graceFret.isPresent() && (graceFret.getAsInt() < 0 || graceFret.getAsInt() > Place.Fretted.MOST_FRETS)) {
            throw new IllegalArgumentException("no such fret: " + graceFret.getAsInt());
        }
    }

    public static Arrival by(Kind kind) {
        return new Arrival(kind, OptionalInt.empty());
    }

    public static Arrival from(Kind kind, int graceFret) {
        return new Arrival(kind, OptionalInt.of(graceFret));
    }

    /** Whether a short note at another fret comes first. */
    public boolean isGrace() {
        return graceFret.isPresent();
    }
}
