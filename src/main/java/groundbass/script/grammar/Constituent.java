package groundbass.script.grammar;

import groundbass.score.Fraction;
import groundbass.script.claims.Manner;
import groundbass.theory.ChordSymbol.Chord;
import groundbass.theory.Degree;
import groundbass.theory.Mode;
import groundbass.theory.NoteName;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/** A piece of a clause that means one thing. */
public sealed interface Constituent {
    /** Bars by their numbers. */
    record Bars(List<Integer> numbers) implements Constituent {}

    /** A bar by where it stands. */
    record BarAt(Way way) implements Constituent {
        public enum Way {
            THIS,
            NEXT,
            FIRST,
            PENULTIMATE,
            LAST,
            EACH
        }
    }

    /** So many bars at the start of the line, or at its end. */
    record BarsAtEdge(int many, boolean last) implements Constituent {}

    /** The line is so many bars long. */
    record BarCount(int bars) implements Constituent {}

    record Beats(List<Integer> numbers) implements Constituent {}

    /** So many beats at the end of a bar. */
    record LastBeats(int many) implements Constituent {}

    /** Parts of a beat, 1 (e) to 3 (a), 0 for its first half; the beat in hand where none is said. */
    record Parts(OptionalInt beat, List<Integer> parts) implements Constituent {}

    /** The first or the second half of a bar. */
    record HalfBar(int nth) implements Constituent {}

    /** The line as a whole. */
    record Whole() implements Constituent {}

    record Name(NoteName name) implements Constituent {}

    /** A string, by its name or its number, a fret, or both. */
    record Place(Optional<NoteName> string, OptionalInt number, OptionalInt fret) implements Constituent {
        public boolean hasString() {
            return string.isPresent() || number.isPresent();
        }
    }

    /** A length as it is written. */
    record Value(Fraction length) implements Constituent {}

    /** So many beats, or such a share of a bar. */
    record Lasting(Fraction amount, boolean ofBar) implements Constituent {}

    /** Every bar has so many beats. */
    record BeatsInBar(int beats) implements Constituent {}

    record Triplet() implements Constituent {}

    record Played(Manner manner) implements Constituent {}

    record Dead() implements Constituent {}

    record Short() implements Constituent {}

    record Open() implements Constituent {}

    record Silence(Optional<Fraction> length) implements Constituent {}

    /** So many of what follows; 0 for none. */
    record Count(int many) implements Constituent {}

    /** A number that counts nothing that was said. */
    record Number(int value) implements Constituent {}

    /** So many times. */
    record Times(int many) implements Constituent {}

    /** Which of several. */
    record Rank(Which which, int nth) implements Constituent {
        public enum Which {
            NTH,
            MIDDLE,
            LAST,
            NEXT,
            HIGHEST,
            LOWEST
        }
    }

    /** Steps between notes, in semitones, or a number of letters where the size was not said. */
    record Interval(int number, OptionalInt semitones) implements Constituent {}

    record Octaves(int many) implements Constituent {}

    /** So many frets or strings. */
    record Move(int many, boolean strings) implements Constituent {}

    record KeyNamed(NoteName tonic, Mode mode) implements Constituent {}

    /** So many sharps before the line; fewer than none are flats. */
    record Signature(int sharps) implements Constituent {}

    record ChordNamed(Chord chord) implements Constituent {}

    /** The degree of a chord; its alteration where that was said. */
    record ChordTone(int number, Optional<Degree> exact) implements Constituent {}

    record TempoNamed(int perMinute) implements Constituent {}

    record MeterNamed(int counts, int unit) implements Constituent {}

    record FeelNamed(boolean swung) implements Constituent {}

    /** @param instrument whether that is what a bass is called by, and no number of its strings that are played */
    record StringCount(int strings, boolean instrument) implements Constituent {}

    /** A word that ties others together, or a verb. */
    record Small(Tie tie) implements Constituent {}

    /** A word that is not known, or a mark at which one pauses. */
    record Unknown(boolean pause) implements Constituent {}

    enum Tie {
        BE,
        HAVE,
        PLAY,
        START,
        END,
        HOLD,
        UP,
        DOWN,
        CLIMB,
        FALL,
        CHANGE,
        ALL,
        BOTH,
        EACH,
        ONLY,
        NO,
        NOT,
        AGAIN,
        EXCEPT,
        ANY,
        SAME,
        DIFFERENT,
        LIKE,
        APART,
        BETWEEN,
        IT,
        THAT,
        WHICH,
        THEY,
        WE,
        THERE,
        THEN,
        AFTER,
        /** Nothing comes between. */
        DIRECTLY,
        BEFORE,
        ON,
        IN,
        OF,
        AT,
        TO,
        FROM,
        OVER,
        WITH,
        ABOVE,
        BELOW,
        FOR,
        AND,
        BUT,
        SO,
        COMMA,
        COLON,
        SEMICOLON,
        STOP,
        ASK,
        MAYBE,
        SORRY,
        YES,
        WHAT,
        HOW_MANY,
        DO,
        NOTE,
        ONE,
        BAR,
        BEAT,
        STRING,
        FRET,
        CHORD,
        KEY,
        BASS,
        TEMPO,
        METER,
        RHYTHM,
        FEEL,
        THUMB,
        FINGERS,
        LONG,
        SLOW,
        THE,
        HIGH,
        LOW,
        /** Something is reckoned in. */
        RECKON,
        /** All in all. */
        SUM,
        OTHER
    }
}
