package groundbass.walkthrough;

import groundbass.score.Fraction;
import groundbass.score.Line;
import groundbass.score.Note;
import groundbass.score.Place.Fretted;
import groundbass.score.Technique;
import groundbass.walkthrough.Pace.Bars;
import groundbass.walkthrough.words.Wording;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.TreeMap;

/**
 * Where a line asks most of the hands: a shift than which none is wider, the longest run without a rest, the bars that
 * are quickest. A shift is worth a word from five frets on, and nothing is called most where another is as much (common
 * practice, no source).
 */
final class HardSpots {
    private static final int WIDE_SHIFT = 5;

    private final Optional<Shift> shift;
    private final Pace pace;

    /** The fretting hand moves along the neck to reach a note of the bar of this index. */
    private record Shift(int bar, Fraction at, int from, int to) {
        int width() {
            return Math.abs(to - from);
        }
    }

    HardSpots(Line line) {
        this.shift = widest(shifts(line));
        this.pace = new Pace(line);
    }

    /** How many strokes a second the fastest beat has at full tempo; 0 in a line without notes. */
    double strokesPerSecond() {
        return pace.strokesPerSecond();
    }

    /** The bars that are quicker than all others. */
    Optional<Bars> quickest() {
        return pace.quickest();
    }

    /** Sentences about a stretch of the bar of this index, with what to practise there. */
    List<String> in(int bar, Fraction from, Fraction to, HandPositions hand, Wording words) {
        var sentences = new ArrayList<String>();
        shift.filter(spot -> spot.bar() == bar && isWithin(spot.at(), from, to))
                .map(spot -> shift(spot, hand, words))
                .ifPresent(sentences::add);
        pace.longest()
                .filter(run -> run.bar() == bar && isWithin(run.to(), from, to) && pace.endsBefore(run, to))
                .map(run -> words.say("hard.run", words.number(run.notes())))
                .ifPresent(sentences::add);
        return sentences;
    }

    /** With what to practise there and, where that is known, the finger to come down with. */
    private static String shift(Shift spot, HandPositions hand, Wording words) {
        var finger = hand.finger(spot.bar(), spot.at(), spot.to());
        String cure = finger.isPresent()
                ? words.say("hard.shift.finger", words.say("finger.with." + finger.getAsInt()))
                : words.say("hard.shift.cure");
        return words.say("hard.shift", cure);
    }

    private static boolean isWithin(Fraction at, Fraction from, Fraction to) {
        return !at.isBefore(from) && at.isBefore(to);
    }

    /** The widest, where it is the only one so wide. */
    private static Optional<Shift> widest(List<Shift> shifts) {
        int most = shifts.stream().mapToInt(Shift::width).max().orElse(0);
        var widest = shifts.stream().filter(shift -> shift.width() == most).toList();
        return most >= WIDE_SHIFT && widest.size() == 1 ? Optional.of(widest.get(0)) : Optional.empty();
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
}
