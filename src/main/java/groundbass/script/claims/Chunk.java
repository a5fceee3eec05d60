package groundbass.script.claims;

import groundbass.score.Fraction;
import groundbass.score.Meter;
import groundbass.script.words.Sense;
import groundbass.theory.ChordSymbol;
import groundbass.theory.Key;
import groundbass.theory.NoteName;
import java.util.List;
import java.util.Optional;

/** A piece of a sentence that means one thing: note names, places, a moment, or a word that ties such things together. */
public sealed interface Chunk {
    /** Note names in a row, as in "C, D and E"; {@code path} where one leads to the next, as in "F up to G". */
    record Notes(List<NoteName> names, boolean path) implements Chunk {}

    /** Places in a row; {@code path} where one leads to the next, as in "from the third to the fifth fret". */
    record Places(List<NamedPlace> spots, boolean path) implements Chunk {}

    /** A way of playing, and how many notes it is said of. */
    record Played(Manner manner, int count) implements Chunk {}

    /** Note lengths in a row. */
    record Lengths(List<Fraction> each) implements Chunk {}

    /** So many beats or whole bars of sound. */
    record Lasts(int beats, boolean wholeBar) implements Chunk {}

    /** A rest, with its length where that is said. */
    record Silence(Optional<Fraction> length) implements Chunk {}

    /** Bars by their numbers. */
    record Bars(List<Integer> numbers) implements Chunk {}

    /** A bar by where it stands: the next one, the last one. */
    record BarAt(Way way) implements Chunk {
        public enum Way {
            THIS,
            PICKUP,
            NEXT,
            LAST
        }
    }

    /** Beats, by their numbers. */
    record Beats(List<Integer> numbers, boolean exactly) implements Chunk {}

    /** The last so many beats. */
    record LastBeats(int many) implements Chunk {}

    /** A part of a beat, from 1 (e) to 3 (a); the beat is the one spoken of where no number is said. */
    record Part(Optional<Integer> beat, int part) implements Chunk {}

    /** Which of the notes there, such as the first two; of all notes, or of those that are named with it. */
    record Order(Which which, int nth, boolean ofAll) implements Chunk {}

    record Finger(int number) implements Chunk {}

    /** Two notes at once. */
    record Pair() implements Chunk {}

    /** So many notes, as in "the two of them". */
    record KeyNamed(Key key, boolean claimed) implements Chunk {}

    record TonicNamed(NoteName tonic) implements Chunk {}

    record MeterNamed(Meter meter) implements Chunk {}

    record TempoNamed(int perMinute) implements Chunk {}

    record ChordNamed(ChordSymbol chord) implements Chunk {}

    record FeelNamed(boolean swung) implements Chunk {}

    /** The line is so many bars long. */
    record BarCount(int bars) implements Chunk {}

    /** So many octaves: up (1), down (-1), or apart (0). */
    record Octaves(int octaves, int direction) implements Chunk {}

    /** So many frets up or down. */
    record Moved(int frets) implements Chunk {}

    /** A word that ties its neighbours together. */
    record Tie(Sense sense) implements Chunk {}

    /** Which of the notes of a stretch. */
    enum Which {
        FIRST,
        NTH,
        LAST,
        /** Somewhere near the end. */
        ENDING,
        HIGHEST,
        LOWEST
    }
}
