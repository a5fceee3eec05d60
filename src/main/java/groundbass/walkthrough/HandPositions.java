package groundbass.walkthrough;

import groundbass.score.Fraction;
import groundbass.score.InForce;
import groundbass.score.Line;
import groundbass.score.Note;
import groundbass.score.Place.Fretted;
import groundbass.walkthrough.words.Wording;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/** Where on the neck the fretting hand lies, told at the beat where it comes to lie elsewhere. */
final class HandPositions {
    /** A hand covers as many frets as it has fingers to stop them with (common practice, no source). */
    private static final int COVERED = 4;

    private final List<InForce> inForce;
    private final List<Position> positions = new ArrayList<>();

    /** From a beat of the bar of this index on. */
    private record Position(int bar, Fraction at, Frets frets) {}

    /** The frets that are stopped, the last included. */
    private record Frets(int lowest, int highest) {
        Frets with(Frets other) {
            return new Frets(Math.min(lowest, other.lowest), Math.max(highest, other.highest));
        }

        boolean isCovered() {
            return highest - lowest < COVERED;
        }
    }

    /** A bar that is told by another has that one's positions, and after it the next is told anew. */
    HandPositions(Line line, EarlierBars earlier) {
        this.inForce = line.inForce();
        boolean lies = false;
        for (int i = 0; i < line.bars().size(); i++) {
            if (earlier.of(i).isPresent()) {
                lies = false;
                continue;
            }
            for (var start : inForce.get(i).meter().beatStarts()) {
                var here = frets(line.bars().get(i).notes(), i, start);
                if (here.isPresent()) {
                    lies = lie(new Position(i, start, here.get()), lies);
                }
            }
        }
    }

    /** Takes a beat in; whether the hand lies in one position after it. */
    private boolean lie(Position next, boolean lies) {
        int last = positions.size() - 1;
        var together = lies ? positions.get(last).frets().with(next.frets()) : next.frets();
        if (lies && together.isCovered()) {
            positions.set(
                    last,
                    new Position(positions.get(last).bar(), positions.get(last).at(), together));
            return true;
        }
        positions.add(next);
        return next.frets().isCovered();
    }

    /** Sentences about a stretch of the bar of this index. What one fret alone or no hand covers its notes tell. */
    Stream<String> in(int bar, Fraction from, Fraction to, Wording words) {
        return positions.stream()
                .filter(each -> each.bar() == bar
                        && !each.at().isBefore(from)
                        && each.at().isBefore(to))
                .filter(each -> each.frets().isCovered()
                        && each.frets().lowest() < each.frets().highest())
                .map(each -> said(each, each.at().equals(from), words));
    }

    private String said(Position position, boolean first, Wording words) {
        String lowest = String.valueOf(position.frets().lowest());
        String highest = String.valueOf(position.frets().highest());
        var count = words.count(position.at(), inForce.get(position.bar()).meter());
        return first || count.isEmpty()
                ? words.say("hand.frets", lowest, highest)
                : words.say("hand.from", lowest, highest, count.get());
    }

    /** A harmonic is touched, what is tapped the other hand stops, and an open string leaves the hand where it is. */
    private Optional<Frets> frets(List<Note> notes, int bar, Fraction beat) {
        var stopped = notes.stream()
                .filter(note -> inForce.get(bar).meter().beatStart(note.onset()).equals(beat))
                .filter(note -> note.ornaments().harmonic().isEmpty() && !HardSpots.isTapped(note))
                .map(Note::place)
                .filter(Fretted.class::isInstance)
                .mapToInt(place -> ((Fretted) place).fret())
                .filter(fret -> fret > 0)
                .summaryStatistics();
        return stopped.getCount() == 0 ? Optional.empty() : Optional.of(new Frets(stopped.getMin(), stopped.getMax()));
    }
}
