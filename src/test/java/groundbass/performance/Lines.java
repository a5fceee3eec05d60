package groundbass.performance;

import groundbass.score.Arrival;
import groundbass.score.Bar;
import groundbass.score.Changes;
import groundbass.score.Fraction;
import groundbass.score.Header;
import groundbass.score.Line;
import groundbass.score.Meter;
import groundbass.score.Note;
import groundbass.score.Ornaments;
import groundbass.score.Place;
import groundbass.score.Repeats;
import groundbass.score.Technique;
import groundbass.score.Tempo;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/** Short lines for tests. Times are given as numerator and denominator of a whole note. */
public final class Lines {
    private Lines() {}

    public static Fraction f(long numerator, long denominator) {
        return Fraction.of(numerator, denominator);
    }

    /** Plucked by a finger on the lowest of four strings. */
    public static Note note(Fraction onset, Fraction length, int fret) {
        return Note.plucked(onset, length, Place.of(4, fret), Technique.FINGER);
    }

    public static Note note(Fraction onset, Fraction length, Place place, Technique technique) {
        return Note.plucked(onset, length, place, technique);
    }

    public static Note by(Arrival.Kind kind, Fraction onset, Fraction length, int fret) {
        return new Note(
                onset, length, Place.of(4, fret), Optional.empty(), Optional.of(Arrival.by(kind)), Ornaments.NONE);
    }

    public static Header quarters(int perMinute) {
        return Header.PLAIN.with(new Tempo(perMinute, f(1, 4)));
    }

    public static Bar bar(Note... notes) {
        return bar(Meter.COMMON, notes);
    }

    public static Bar bar(Meter meter, Note... notes) {
        return Bar.of(meter, List.of(notes));
    }

    public static Bar empty() {
        return bar();
    }

    public static Bar pickup(Meter meter, Fraction from, Note... notes) {
        return new Bar(
                from,
                meter.length(),
                Changes.NONE,
                Repeats.NONE,
                List.of(),
                List.of(notes),
                List.of(),
                Optional.empty());
    }

    public static Line line(Header header, Bar... bars) {
        return new Line(header, Arrays.asList(bars));
    }

    /** Four quarters or eight eighths and so on: so many equal notes in a bar of 4/4, on fret 5. */
    public static Bar even(int notes) {
        var length = f(1, notes);
        return Bar.of(
                Meter.COMMON,
                IntStream.range(0, notes)
                        .mapToObj(i -> note(length.times(i), length, 5))
                        .toList());
    }
}
