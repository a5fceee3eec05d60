package groundbass.script.checking;

import groundbass.score.Fraction;
import groundbass.score.Meter;
import groundbass.score.Note;
import groundbass.score.Place.Fretted;
import groundbass.score.Position;
import groundbass.theory.ChordSymbol;
import groundbass.theory.Degree;
import groundbass.theory.Key;
import groundbass.theory.NoteName;
import java.util.List;
import java.util.Optional;

/** What would be right where a statement is wrong. */
public sealed interface Right {
    /** The place has another name; the name that was said lies at these frets of the same string. */
    record NameOfPlace(Fretted place, NoteName name, NoteName said, List<Integer> frets) implements Right {}

    /**
     * The line has another note there.
     *
     * @param name empty for a dead note
     * @param told what the note is told by, because the statement was wrong about it
     */
    record NoteThere(Position position, String count, Note note, Optional<NoteName> name, Told told) implements Right {}

    /** Which details of a note are told. */
    record Told(boolean technique, boolean length, boolean finger) {}

    /** Nothing begins there: a rest, or a note that is still held. */
    record NothingBegins(Position position, String count, boolean rest) implements Right {}

    /** There is no rest there: this note sounds. */
    record RestLength(Position position, String count, Fraction length) implements Right {}

    /** The bars differ, for the first time at this count; a bar that is the same as the first, if any. */
    record BarsDiffer(int bar, int as, Position position, String count, Optional<Integer> sameAs) implements Right {}

    /** The second place sounds so many semitones above the first. */
    record Interval(int semitones) implements Right {}

    /** The line is in another key. */
    record KeyThere(Key key) implements Right {}

    /** The line has another meter. */
    record MeterThere(Meter meter) implements Right {}

    /** The line has another tempo, in beats a minute. */
    record TempoThere(int perMinute) implements Right {}

    /** The line is swung, or straight. */
    record FeelThere(boolean swung) implements Right {}

    /** The bar stands over these chords. */
    record ChordsThere(int bar, List<ChordSymbol> chords) implements Right {}

    /** The line ends with this bar. */
    record LastBar(int bar) implements Right {}

    /** So many of them are there. */
    record CountThere(int count) implements Right {}

    /** The second note lies so many semitones above the first, or below. */
    record StepThere(int semitones) implements Right {}

    /** The note is another degree of the chord, or none. */
    record DegreeThere(Optional<Degree> degree, ChordSymbol chord) implements Right {}

    /** It is found in these bars and in no other; empty where it is found nowhere. */
    record OnlyIn(List<Integer> bars) implements Right {}

    /** So many strings. */
    record StringsThere(int count) implements Right {}

    /** The bars begin or end with different notes, or stand over different chords. */
    record NotAlike() implements Right {}
}
