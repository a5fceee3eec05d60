package groundbass.walkthrough;

import groundbass.score.Fraction;
import groundbass.score.InForce;
import groundbass.score.Line;
import groundbass.score.Note;
import groundbass.score.Place.Fretted;
import groundbass.score.Technique;
import groundbass.walkthrough.words.Wording;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.TreeMap;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * Where a line asks most of the hands: a shift and a beat than which none is wider or faster, each where it comes first.
 * A shift is worth a word from five frets on, a beat from six strokes a second on, and only where it stands out: where
 * all beats are as fast, none is the fastest (common practice, no source). Notes that are hammered, pulled or slid to
 * are no strokes.
 */
final class HardSpots {
    private static final int WIDE_SHIFT = 5;
    private static final double FAST = 6;

    /** One beat of so many at most is as fast as the fastest, or as dense as the densest, where that stands out. */
    private static final int FASTEST_OF = 3;

    private static final int DENSEST_OF = 8;

    /** Seconds between two notes that are equal but for the rounding of their sums. */
    private static final double EQUAL = 1e-9;

    private final List<InForce> inForce;
    private final Optional<Shift> shift;
    private final Optional<Beat> fastest;
    private final Optional<Why> standsOut;

    /**
     * What asks most of the hands.
     *
     * @param bar  its index
     * @param beat from 1
     */
    record Spot(int bar, int beat, Why why) {}

    /** What it asks. */
    enum Why {
        /** Its notes follow one another faster than those of other beats. */
        FAST,
        /** Notes are as fast elsewhere, but nowhere so many without a rest. */
        DENSE,
        SHIFT,
        FAST_SHIFT,
        DENSE_SHIFT
    }

    /** The fretting hand moves along the neck to reach a note of the bar of this index. */
    private record Shift(int bar, Fraction at, int from, int to) {
        int width() {
            return Math.abs(to - from);
        }
    }

    /** @param gap seconds from one note to the next, where they are nearest to one another; infinite for one alone */
    private record Beat(int bar, Fraction at, double perSecond, double gap) {}

    HardSpots(Line line) {
        this.inForce = line.inForce();
        this.shift = widest(shifts(line));
        var beats = beats(line);
        this.fastest = beats.stream().reduce((one, two) -> two.perSecond() > one.perSecond() ? two : one);
        this.standsOut = fastest.flatMap(most -> standsOut(most, beats));
    }

    private static Optional<Why> standsOut(Beat most, List<Beat> beats) {
        double least = beats.stream().mapToDouble(Beat::gap).min().orElse(most.gap());
        long asFast = beats.stream().filter(beat -> beat.gap() < least + EQUAL).count();
        long asDense = beats.stream()
                .filter(beat -> beat.perSecond() > most.perSecond() - EQUAL)
                .count();
        if (most.gap() < least + EQUAL && asFast * FASTEST_OF <= beats.size()) {
            return Optional.of(Why.FAST);
        }
        return asDense * DENSEST_OF <= beats.size() ? Optional.of(Why.DENSE) : Optional.empty();
    }

    /** How many strokes a second the fastest beat has at full tempo; 0 in a line without notes. */
    double strokesPerSecond() {
        return fastest.map(Beat::perSecond).orElse(0.0);
    }

    /**
     * What is worth practising by itself, in the order of the line.
     *
     * @param fast from how many strokes a second on the fastest beat is
     */
    List<Spot> spots(double fast) {
        var widest = shift.map(each -> spot(each.bar(), each.at(), Why.SHIFT));
        var quickest = fastest(fast).map(each -> spot(each.bar(), each.at(), standsOut.orElseThrow()));
        if (widest.isPresent() && quickest.isPresent() && isOneBeat(widest.get(), quickest.get())) {
            var why = quickest.get().why() == Why.FAST ? Why.FAST_SHIFT : Why.DENSE_SHIFT;
            return List.of(new Spot(widest.get().bar(), widest.get().beat(), why));
        }
        return Stream.of(widest, quickest)
                .flatMap(Optional::stream)
                .sorted(Comparator.comparingInt(Spot::bar).thenComparingInt(Spot::beat))
                .toList();
    }

    private Spot spot(int bar, Fraction at, Why why) {
        var meter = inForce.get(bar).meter();
        return new Spot(bar, 1 + meter.beatStarts().indexOf(meter.beatStart(at)), why);
    }

    private static boolean isOneBeat(Spot one, Spot other) {
        return one.bar() == other.bar() && one.beat() == other.beat();
    }

    private Optional<Beat> fastest(double fast) {
        return fastest.filter(beat -> standsOut.isPresent() && beat.perSecond() >= fast);
    }

    /** Sentences about a stretch of the bar of this index, with what to practise there. */
    List<String> in(int bar, Fraction from, Fraction to, HandPositions hand, Wording words) {
        var sentences = new ArrayList<String>();
        shift.filter(spot -> spot.bar() == bar && isWithin(spot.at(), from, to))
                .map(spot -> shift(spot, hand, words))
                .ifPresent(sentences::add);
        fastest(FAST)
                .filter(spot -> spot.bar() == bar && isWithin(spot.at(), from, to))
                .map(spot -> words.say("hard.fast", Math.round(spot.perSecond())))
                .ifPresent(sentences::add);
        return sentences;
    }

    /** With what to practise there and, where that is known, the finger to come down with. */
    private static String shift(Shift spot, HandPositions hand, Wording words) {
        var finger = hand.finger(spot.bar(), spot.at(), spot.to());
        String cure = finger.isPresent()
                ? words.say("hard.shift.finger", words.say("finger.with." + finger.getAsInt()))
                : words.say("hard.shift.cure");
        return words.say("hard.shift", spot.from(), spot.to(), cure);
    }

    private static boolean isWithin(Fraction at, Fraction from, Fraction to) {
        return !at.isBefore(from) && at.isBefore(to);
    }

    private static Optional<Shift> widest(List<Shift> shifts) {
        return shifts.stream()
                .filter(shift -> shift.width() >= WIDE_SHIFT)
                .reduce((one, two) -> two.width() > one.width() ? two : one);
    }

    /** Whether a finger of the plucking hand stops it, for which the fretting hand need not move. */
    static boolean isTapped(Note note) {
        return note.pluck().equals(Optional.of(Technique.TAP));
    }

    /** An open string or a dead note gives the hand time to move: the next fretted note is no shift. */
    private static List<Shift> shifts(Line line) {
        var shifts = new ArrayList<Shift>();
        int last = 0;
        for (int i = 0; i < line.bars().size(); i++) {
            for (var note : firstOfEach(line.bars().get(i).notes())) {
                int fret = note.place() instanceof Fretted fretted ? fretted.fret() : 0;
                if (fret > 0 && last > 0) {
                    shifts.add(new Shift(i, note.onset(), last, fret));
                }
                last = fret;
            }
        }
        return shifts;
    }

    /** One note of those that begin together, which one grip holds. */
    private static List<Note> firstOfEach(List<Note> notes) {
        var first = new TreeMap<Fraction, Note>();
        notes.stream().filter(note -> !isTapped(note)).forEach(note -> first.putIfAbsent(note.onset(), note));
        return List.copyOf(first.values());
    }

    private static List<Beat> beats(Line line) {
        var inForce = line.inForce();
        var beats = new ArrayList<Beat>();
        for (int i = 0; i < line.bars().size(); i++) {
            beats.addAll(beats(i, inForce.get(i), line.bars().get(i).notes()));
        }
        return beats;
    }

    private static List<Beat> beats(int bar, InForce inForce, List<Note> notes) {
        return inForce.meter().beatStarts().stream()
                .map(start -> beat(bar, start, inForce, notes))
                .toList();
    }

    private static Beat beat(int bar, Fraction start, InForce inForce, List<Note> notes) {
        var meter = inForce.meter();
        var onsets = notes.stream().map(Note::onset).distinct().sorted().toList();
        long strokes = notes.stream()
                .filter(note -> note.pluck().isPresent())
                .map(Note::onset)
                .filter(onset -> meter.beatStart(onset).equals(start))
                .distinct()
                .count();
        double gap = IntStream.range(0, onsets.size() - 1)
                .filter(i -> meter.beatStart(onsets.get(i)).equals(start))
                .mapToDouble(i -> inForce.tempo().seconds(onsets.get(i + 1).minus(onsets.get(i))))
                .min()
                .orElse(Double.POSITIVE_INFINITY);
        var length = meter.beatEnd(start).minus(start);
        return new Beat(bar, start, strokes / inForce.tempo().seconds(length), gap);
    }
}
