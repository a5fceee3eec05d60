package groundbass.score;

import groundbass.score.Place.Fretted;
import groundbass.theory.Key;
import groundbass.theory.NoteName;
import java.util.Collections;
import java.util.EnumSet;
import java.util.Objects;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;

/**
 * What else is written at a note.
 *
 * @param spread how the notes of its chord follow one another; a bar gives it to all of a chord, and to no note alone
 * @param finger the fretting finger, 1 (index) to 4 (little)
 * @param spelling the name to print where the key's own choice is not wanted
 */
public record Ornaments(
        Set<Mark> marks,
        Optional<Bend> bend,
        Optional<Trill> trill,
        Optional<Harmonic> harmonic,
        Optional<SlideIn> slideIn,
        Optional<SlideOff> slideOff,
        Optional<Spread> spread,
        OptionalInt finger,
        Optional<NoteName> spelling) {
    public static final Ornaments NONE = new Ornaments(
            Set.of(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            Optional.empty(),
            OptionalInt.empty(),
            Optional.empty());

    /** Signs without a figure of their own, by line text's words. */
    public enum Mark {
        SHORT("short"),
        /** Held for all of its length. */
        TENUTO("tenuto"),
        ACCENT("accent"),
        /** A strong accent. */
        MARCATO("marcato"),
        /** Soft, but pitched. */
        GHOST("ghost"),
        VIBRATO("vibrato"),
        /** Sounds until its string is touched. */
        RING("ring"),
        FERMATA("fermata");

        private final String word;

        Mark(String word) {
            this.word = word;
        }

        /** The word that line text uses. */
        public String word() {
            return word;
        }
    }

    /** A slide into the note from no stated fret. */
    public enum SlideIn {
        BELOW,
        ABOVE
    }

    /** A slide out of the note to no stated fret. */
    public enum SlideOff {
        DOWN,
        UP
    }

    /** How notes come that begin together (rule: rolled-chord-sign, chord-bracket). */
    public enum Spread {
        /** One after the other, the lowest first, as it is understood where nothing is said. */
        ROLL("roll"),
        /** The same, and said. */
        ROLL_UP("roll up"),
        ROLL_DOWN("roll down"),
        /** Strictly at once. */
        BRACKET("bracket");

        private final String words;

        Spread(String words) {
            this.words = words;
        }

        /** The words that line text uses. */
        public String words() {
            return words;
        }

        public boolean isRolled() {
            return this != BRACKET;
        }
    }

    /**
     * The string pushed sideways (rule: bend-arrow).
     *
     * @param quarters of a whole tone: 1 to 8
     * @param before whether it is bent already when it is struck
     * @param released whether it is let back while it sounds
     */
    public record Bend(int quarters, boolean before, boolean released) {
        public static final int MOST_QUARTERS = 8;

        /** Up, and held there. */
        public Bend(int quarters) {
            this(quarters, false, false);
        }

        public Bend {
            if (quarters < 1 || quarters > MOST_QUARTERS) {
                throw new IllegalArgumentException("a bend is a quarter tone to two tones: " + quarters);
            }
        }

        public Bend beforeTheStroke() {
            return new Bend(quarters, true, released);
        }

        public Bend letBack() {
            return new Bend(quarters, before, true);
        }

        public double semitones() {
            return quarters / 2.0;
        }
    }

    /**
     * The note in quick turn with the one so many frets above it (rule: trill-sign).
     *
     * @param frets 1 or 2: a minor or a major second
     */
    public record Trill(int frets) {
        public static final int MOST_FRETS = 2;

        public Trill {
            if (frets < 1 || frets > MOST_FRETS) {
                throw new IllegalArgumentException("a trill goes to the note one or two frets above: " + frets);
            }
        }

        /** To the key's note on the next letter, as near to that as a second is. */
        public static Trill in(Key key, NoteName name) {
            var letter = name.letter().plus(1);
            var next = new NoteName(letter, key.alterationOf(letter));
            // the fewest semitones up or down: an E sharp and an F are none apart
            int away = Math.floorMod(next.pitchClass() - name.pitchClass() + 6, 12) - 6;
            return new Trill(Math.max(1, Math.min(MOST_FRETS, away)));
        }
    }

    public Ornaments {
        marks = marks.isEmpty() ? Set.of() : Collections.unmodifiableSet(EnumSet.copyOf(marks));
        Objects.requireNonNull(spread);
        Objects.requireNonNull(spelling);
        if (finger.isPresent() && (finger.getAsInt() < 1 || finger.getAsInt() > 4)) {
            throw new IllegalArgumentException("fretting fingers are 1 to 4: " + finger.getAsInt());
        }
    }

    /** Whether a neck of so many frets has this one, and the upper fret of a trill at it. */
    public boolean fit(Place place, int frets) {
        int above = trill.map(Trill::frets).orElse(0);
        return !(place instanceof Fretted fretted) || fretted.fret() + above <= frets;
    }

    public boolean has(Mark mark) {
        return marks.contains(mark);
    }

    public Ornaments with(Mark mark) {
        var more = EnumSet.of(mark);
        more.addAll(marks);
        return new Ornaments(more, bend, trill, harmonic, slideIn, slideOff, spread, finger, spelling);
    }

    public Ornaments with(Bend newBend) {
        return new Ornaments(marks, Optional.of(newBend), trill, harmonic, slideIn, slideOff, spread, finger, spelling);
    }

    public Ornaments with(Trill newTrill) {
        return new Ornaments(marks, bend, Optional.of(newTrill), harmonic, slideIn, slideOff, spread, finger, spelling);
    }

    public Ornaments withoutTrill() {
        return new Ornaments(marks, bend, Optional.empty(), harmonic, slideIn, slideOff, spread, finger, spelling);
    }

    public Ornaments with(Harmonic newHarmonic) {
        return new Ornaments(marks, bend, trill, Optional.of(newHarmonic), slideIn, slideOff, spread, finger, spelling);
    }

    public Ornaments with(SlideIn newSlideIn) {
        return new Ornaments(marks, bend, trill, harmonic, Optional.of(newSlideIn), slideOff, spread, finger, spelling);
    }

    public Ornaments with(SlideOff newSlideOff) {
        return new Ornaments(marks, bend, trill, harmonic, slideIn, Optional.of(newSlideOff), spread, finger, spelling);
    }

    public Ornaments withSpread(Optional<Spread> newSpread) {
        return new Ornaments(marks, bend, trill, harmonic, slideIn, slideOff, newSpread, finger, spelling);
    }

    public Ornaments withFinger(int newFinger) {
        return new Ornaments(
                marks, bend, trill, harmonic, slideIn, slideOff, spread, OptionalInt.of(newFinger), spelling);
    }

    public Ornaments withSpelling(NoteName newSpelling) {
        return new Ornaments(marks, bend, trill, harmonic, slideIn, slideOff, spread, finger, Optional.of(newSpelling));
    }
}
