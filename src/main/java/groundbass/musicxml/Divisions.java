package groundbass.musicxml;

import groundbass.score.Fraction;
import groundbass.writing.Element;
import groundbass.writing.WrittenBar;
import java.util.List;
import java.util.stream.Stream;

/**
 * Into how many parts a quarter is divided, so that every time of a bar is a whole number of them: one figure for the
 * whole line where it stays small enough for all readers, else one for each bar.
 */
final class Divisions {
    /** What MusicXML 4.0 advises not to exceed, for the sake of Standard MIDI Files. */
    private static final long MOST = 16_383;

    private final List<Long> byBar;

    private Divisions(List<Long> byBar) {
        this.byBar = byBar;
    }

    static Divisions of(List<WrittenBar> bars) {
        var own = bars.stream().map(Divisions::own).toList();
        long common = 1;
        for (long each : own) {
            common = common > MOST ? common : multiple(common, each);
        }
        long all = common;
        return new Divisions(all > MOST ? own : own.stream().map(each -> all).toList());
    }

    long of(int bar) {
        return byBar.get(bar);
    }

    boolean changesAt(int bar) {
        return bar == 0 || !byBar.get(bar).equals(byBar.get(bar - 1));
    }

    /** A stretch of time in this bar's parts. */
    long count(int bar, Fraction time) {
        var parts = time.times(4 * of(bar));
        if (parts.denominator() != 1) {
            throw new IllegalArgumentException("no whole number of parts: " + time);
        }
        return parts.numerator();
    }

    private static long own(WrittenBar bar) {
        return times(bar).mapToLong(time -> time.times(4).denominator()).reduce(1, Divisions::multiple);
    }

    private static Stream<Fraction> times(WrittenBar bar) {
        return Stream.of(
                        Stream.of(bar.bar().from(), bar.bar().to()),
                        bar.voices().stream()
                                .flatMap(voice -> voice.elements().stream())
                                .map(Element::length),
                        bar.bar().chords().stream().map(chord -> chord.at()),
                        bar.bar().directions().stream().map(direction -> direction.at()))
                .flatMap(each -> each);
    }

    private static long multiple(long a, long b) {
        return a / divisor(a, b) * b;
    }

    private static long divisor(long a, long b) {
        return b == 0 ? a : divisor(b, a % b);
    }
}
