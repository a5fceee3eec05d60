package groundbass.walkthrough.idea;

import groundbass.analysis.Tone;
import groundbass.analysis.ToneRole;
import groundbass.score.Fraction;
import groundbass.score.Position;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.stream.IntStream;

/**
 * Notes of one bar that go one way under one chord, from where they turn to where they turn again; one that only leads
 * to what comes next is no part of it.
 *
 * @param tones at least {@link #FEWEST}, one after the other
 */
record Figure(List<Tone> tones) {
    /** Fewer notes go no way worth naming (common practice, no source). */
    static final int FEWEST = 3;

    /** Semitones; a wider step is heard as one way only where all are tones of the chord, an octave never (common practice, no source). */
    private static final int WIDEST_STEP = 4;

    private static final int OCTAVE = 12;

    /** After more than a dotted quarter nobody hears two notes as one way (common practice, no source). */
    private static final Fraction LONGEST_WAIT = Fraction.of(3, 8);

    Figure {
        tones = List.copyOf(tones);
    }

    /** Those of one bar, in order; each begins on the note that the one before ends on, where it turns there. */
    static List<Figure> of(List<Tone> bar) {
        var figures = new ArrayList<Figure>();
        int start = 0;
        while (start + 1 < bar.size()) {
            int last = last(bar, start);
            if (last - start + 1 >= FEWEST && isAlone(bar, start) && isAlone(bar, last)) {
                figures.add(new Figure(bar.subList(start, last + 1)));
            }
            start = Math.max(start + 1, last);
        }
        return figures;
    }

    /** The index up to which notes from a first on go one way. */
    private static int last(List<Tone> bar, int start) {
        int way = way(bar, start);
        int last = start;
        while (last + 1 < bar.size() && way != 0 && way(bar, last) == way && goesOn(bar.subList(start, last + 2))) {
            last++;
        }
        return last;
    }

    /** Whether the last of some notes is still one figure with the others. */
    private static boolean goesOn(List<Tone> tones) {
        var next = tones.get(tones.size() - 1);
        return next.chord().equals(tones.get(0).chord())
                && (isStepwise(tones)
                        || tones.stream().allMatch(tone -> tone.chordDegree().isPresent()))
                && (next.role() != ToneRole.APPROACH || isChromatic(tones));
    }

    private static boolean isStepwise(List<Tone> tones) {
        return IntStream.range(1, tones.size())
                .allMatch(i -> Math.abs(tones.get(i).pitch().midi()
                                - tones.get(i - 1).pitch().midi())
                        <= WIDEST_STEP);
    }

    private static boolean isChromatic(List<Tone> tones) {
        int far = tones.get(tones.size() - 1).pitch().midi()
                - tones.get(0).pitch().midi();
        return Math.abs(far) == tones.size() - 1;
    }

    /** Whether the next note is higher (1), lower (-1), or neither follows nor moves (0). */
    private static int way(List<Tone> bar, int index) {
        var here = bar.get(index);
        var next = bar.get(index + 1);
        int step = next.pitch().midi() - here.pitch().midi();
        boolean ofChord = here.chordDegree().isPresent() && next.chordDegree().isPresent();
        boolean near = Math.abs(step) <= WIDEST_STEP || ofChord && Math.abs(step) < OCTAVE;
        return near && isSoon(here.at().position(), next.at().position()) ? Integer.signum(step) : 0;
    }

    /** Of one bar. */
    private static boolean isSoon(Position here, Position next) {
        var time = next.at().minus(here.at());
        return time.isPositive() && !time.isAfter(LONGEST_WAIT);
    }

    private static boolean isAlone(List<Tone> bar, int index) {
        var at = bar.get(index).at().position();
        return bar.stream().filter(tone -> tone.at().position().equals(at)).count() == 1;
    }

    boolean isRising() {
        return tones.get(1).pitch().midi() > tones.get(0).pitch().midi();
    }

    /** Whether it goes by semitones, with nothing left out. */
    boolean isChromatic() {
        return isChromatic(tones);
    }

    /** Whether it begins where another ends and goes back over the same notes, all the way or not. */
    boolean comesBackOver(Figure other) {
        var back = pitches(reversed(other.tones));
        return follows(other) && tones.size() <= back.size() && pitches(tones).equals(back.subList(0, tones.size()));
    }

    /** Whether it begins on the note that another ends on. */
    boolean follows(Figure other) {
        return first().equals(other.last());
    }

    private static List<Integer> pitches(List<Tone> tones) {
        return tones.stream().map(tone -> tone.pitch().midi()).toList();
    }

    private static List<Tone> reversed(List<Tone> tones) {
        var back = new ArrayList<>(tones);
        Collections.reverse(back);
        return back;
    }

    Tone first() {
        return tones.get(0);
    }

    Tone last() {
        return tones.get(tones.size() - 1);
    }
}
