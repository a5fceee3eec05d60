package groundbass.script.thread.stage;

import groundbass.score.Fraction;
import groundbass.score.Note;
import groundbass.score.Ornaments.Mark;
import groundbass.score.Place.Fretted;
import groundbass.script.checking.Neck;
import groundbass.script.checking.Timeline;
import groundbass.script.checking.Timeline.At;
import groundbass.script.claims.Manner;
import groundbass.theory.NoteName;
import java.util.function.Predicate;

/** One thing that is said of a note, and which notes it is true of. */
public record Part(Kind kind, Predicate<At> test) {
    public enum Kind {
        NAME,
        STRING,
        FRET,
        LENGTH,
        TUPLET,
        MANNER,
        DEAD,
        SHORT,
        OCTAVE,
        /** High or low among the notes of its name. */
        REGISTER,
        DEGREE,
        CHORD
    }

    public boolean fits(At at) {
        return test.test(at);
    }

    public static Part name(NoteName name, Timeline timeline, Neck neck) {
        return new Part(
                Kind.NAME,
                at -> at.note().place() instanceof Fretted place
                        && (neck.isCalled(place, name) || sounds(at.note(), name, timeline)));
    }

    private static boolean sounds(Note note, NoteName name, Timeline timeline) {
        return note.midi(timeline.line().header().tuning()).stream()
                .anyMatch(midi -> Math.floorMod(midi, 12) == name.pitchClass());
    }

    static Part string(int number) {
        return new Part(Kind.STRING, at -> at.note().string() == number);
    }

    static Part fret(int fret) {
        return new Part(Kind.FRET, at -> at.note().place() instanceof Fretted place && place.fret() == fret);
    }

    /** @param tupled whether notes of a tuplet may be called by the value that is written */
    static Part length(Fraction length, Timeline timeline, boolean tupled) {
        return new Part(Kind.LENGTH, at -> {
            var sounding = at.note().length();
            boolean written =
                    tupled && isTuplet(at) && sounding.times(Fraction.of(3, 2)).equals(length);
            return sounding.equals(length) || written || timeline.isTiedHead(at, length);
        });
    }

    static Part tuplet() {
        return new Part(Kind.TUPLET, Part::isTuplet);
    }

    public static boolean isTuplet(At at) {
        return Long.bitCount(at.note().length().denominator()) != 1
                || Long.bitCount(at.note().onset().denominator()) != 1;
    }

    public static Part manner(Manner manner) {
        return new Part(Kind.MANNER, at -> manner.fits(at.note()));
    }

    public static Part dead() {
        return new Part(Kind.DEAD, at -> at.note().isDead());
    }

    /** A note is marked short, or is short. */
    static Part shortened() {
        return new Part(
                Kind.SHORT,
                at -> at.note().has(Mark.SHORT) || !at.note().length().isAfter(Fraction.of(1, 8)));
    }
}
