package groundbass.script.claims;

import groundbass.score.Fraction;
import groundbass.score.Meter;
import groundbass.theory.ChordSymbol;
import groundbass.theory.Key;
import groundbass.theory.NoteName;
import java.util.List;
import java.util.Optional;

/** Something that a script says of the line or of the neck. */
public sealed interface Claim {
    /**
     * A note: its name, place, length, finger and technique, as far as said, and where it is.
     *
     * @param among how many notes are spoken of in one breath
     * @param strictly whether it is this one that must stand at the very moment
     */
    record NoteIs(Described note, Where where, int among, boolean strictly) implements Claim {}

    /** Silence; alone where nothing else is spoken of. */
    record RestIs(Optional<Fraction> length, Where where, boolean alone) implements Claim {}

    /** Bars are the same as other bars, as far as the scope goes. */
    record SameBars(List<Integer> bars, List<Integer> as, Scope scope) implements Claim {}

    /** One place sounds so many octaves above another; either way round where they are said to be apart. */
    record OctavesApart(NamedPlace one, NamedPlace other, int octaves, boolean eitherWay) implements Claim {}

    /** A place sounds some octave of a named note. */
    record OctaveOfName(NamedPlace one, NoteName other) implements Claim {}

    record KeyIs(Key key, Where where) implements Claim {}

    record TonicIs(NoteName tonic) implements Claim {}

    record MeterIs(Meter meter) implements Claim {}

    record TempoIs(int perMinute) implements Claim {}

    record FeelIs(boolean swung) implements Claim {}

    record ChordIs(ChordSymbol chord, Where where) implements Claim {}

    record BarCountIs(int bars) implements Claim {}

    /**
     * How far two bars are said to be the same.
     *
     * @param beats only these; empty for all
     * @param besides these shifted to where the others stand; empty where they stand alike
     * @param but not these
     * @param rhythmOnly whether only the rhythm is
     * @param shift how far the second is moved
     * @param loosely whether the speaker leaves room
     */
    record Scope(
            List<Integer> beats,
            List<Integer> besides,
            List<Integer> but,
            boolean rhythmOnly,
            Shift shift,
            boolean loosely) {
        public static final Scope ALL = new Scope(List.of(), List.of(), List.of(), false, Shift.NONE, false);
    }

    /** How far a bar is moved against another: along the neck, across it, or in pitch wherever it is played. */
    sealed interface Shift {
        Shift NONE = new Frets(0);

        record Frets(int up) implements Shift {}

        record Strings(int higher) implements Shift {}

        record Semitones(int up) implements Shift {}
    }
}
