package groundbass.checks;

import groundbass.analysis.Role;
import groundbass.score.Bar;
import groundbass.score.ChordAt;
import groundbass.score.Fraction;
import groundbass.score.Line;
import groundbass.score.Note;
import groundbass.score.NoteAt;
import groundbass.score.Place;
import groundbass.score.Place.Fretted;
import groundbass.theory.ChordSymbol;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * A bar that says what two other bars say, at the same frets or all shifted along the neck, but for one note a fret or two
 * away, may hold a slip. The last note of a bar and the last bar of four vary on purpose (common practice, no source).
 */
final class BarsRepeatExactly implements Rule {
    private static final int FEWEST_NOTES = 4;
    private static final int SLIP = 2;
    private static final int COMPARED = 48;
    private static final int GROUP = 4;

    /** A bar with its rhythm, strings and techniques as one text, and the chord it begins with. */
    private record Shape(int index, Bar bar, Optional<ChordSymbol> chord) {
        List<Integer> frets() {
            return bar.notes().stream()
                    .map(note -> note.place() instanceof Fretted fretted ? fretted.fret() : -1)
                    .toList();
        }
    }

    /** Which note differs and by how many frets the rest is shifted. */
    private record Deviation(int note, int expected, int shift) {}

    @Override
    public Stream<Finding> findings(Evidence evidence) {
        var groups = new HashMap<String, List<Shape>>();
        for (var shape : shapes(evidence.line())) {
            var group = groups.computeIfAbsent(key(shape.bar()), key -> new ArrayList<>());
            if (group.size() < COMPARED) {
                group.add(shape);
            }
        }
        return groups.values().stream().filter(group -> group.size() > 2).flatMap(group -> group.stream()
                .flatMap(shape -> finding(evidence, group, shape).stream()));
    }

    private static List<Shape> shapes(Line line) {
        var shapes = new ArrayList<Shape>();
        Optional<ChordSymbol> holds = Optional.empty();
        for (int i = 0; i < line.bars().size(); i++) {
            var bar = line.bars().get(i);
            var chords = bar.chords();
            var first = chords.stream().filter(chord -> chord.at().isZero()).findFirst();
            holds = first.isPresent() ? first.map(ChordAt::chord) : holds;
            if (bar.notes().size() >= FEWEST_NOTES) {
                shapes.add(new Shape(i, bar, holds));
            }
            holds = chords.isEmpty()
                    ? holds
                    : Optional.of(chords.get(chords.size() - 1).chord());
        }
        return shapes;
    }

    private static String key(Bar bar) {
        var key = new StringBuilder();
        for (var note : bar.notes()) {
            key.append(note.onset())
                    .append(' ')
                    .append(note.length())
                    .append(' ')
                    .append(note.string());
            key.append(note.isDead() ? "x" : isOpen(note) ? "o" : "")
                    .append(note.pluck())
                    .append(note.arrival());
        }
        return key.toString();
    }

    private static boolean isOpen(Note note) {
        return note.place() instanceof Fretted fretted && fretted.fret() == 0;
    }

    private static Optional<Finding> finding(Evidence evidence, List<Shape> group, Shape shape) {
        var deviations = new HashMap<Deviation, Integer>();
        for (var other : group) {
            if (other.index() != shape.index() && isConfirmed(group, other, shape)) {
                deviation(other, shape).ifPresent(found -> deviations.merge(found, 1, Integer::sum));
            }
        }
        return deviations.keySet().stream()
                .filter(found -> isSlip(evidence, shape, found))
                .findFirst()
                .map(found -> finding(evidence, shape, found));
    }

    /** Whether a third bar has the same shape as {@code other}. */
    private static boolean isConfirmed(List<Shape> group, Shape other, Shape judged) {
        return group.stream()
                .filter(third -> third.index() != other.index() && third.index() != judged.index())
                .anyMatch(third -> isSameShape(other.frets(), third.frets()));
    }

    private static boolean isSameShape(List<Integer> one, List<Integer> other) {
        return differences(one, other).size() <= 1;
    }

    /** The stopped notes by how many frets they lie apart. */
    private static Map<Integer, List<Integer>> differences(List<Integer> one, List<Integer> other) {
        var notes = new HashMap<Integer, List<Integer>>();
        IntStream.range(0, one.size())
                .filter(i -> one.get(i) > 0 && other.get(i) > 0)
                .forEach(i -> notes.computeIfAbsent(other.get(i) - one.get(i), key -> new ArrayList<>())
                        .add(i));
        return notes;
    }

    private static Optional<Deviation> deviation(Shape pattern, Shape judged) {
        var differences = differences(pattern.frets(), judged.frets());
        if (differences.size() != 2) {
            return Optional.empty();
        }
        int total = differences.values().stream().mapToInt(List::size).sum();
        return differences.entrySet().stream()
                .filter(entry -> entry.getValue().size() == total - 1 && total >= FEWEST_NOTES)
                .map(Map.Entry::getKey)
                .findFirst()
                .map(shift -> deviation(pattern, differences, shift));
    }

    private static Deviation deviation(Shape pattern, Map<Integer, List<Integer>> differences, int shift) {
        int note = differences.entrySet().stream()
                .filter(entry -> entry.getKey() != shift)
                .map(entry -> entry.getValue().get(0))
                .findFirst()
                .orElseThrow();
        return new Deviation(note, pattern.frets().get(note) + shift, shift);
    }

    private static boolean isSlip(Evidence evidence, Shape shape, Deviation found) {
        int fret = shape.frets().get(found.note());
        boolean last = found.note() == shape.bar().notes().size() - 1;
        int number = evidence.line().firstNumber() + shape.index();
        boolean turn = number % GROUP == 0 && isLate(shape.bar(), found.note());
        var tone = evidence.analysis().at(NoteAt.of(number, shape.bar().notes().get(found.note())));
        boolean belongs = tone.filter(each -> each.role().isChordTone() || each.role() == Role.APPROACH)
                .isPresent();
        return !last && !turn && !belongs && Math.abs(fret - found.expected()) <= SLIP && found.expected() >= 0;
    }

    private static boolean isLate(Bar bar, int note) {
        return !bar.notes().get(note).onset().isBefore(bar.length().times(Fraction.of(1, 2)));
    }

    private static Finding finding(Evidence evidence, Shape shape, Deviation found) {
        int number = evidence.line().firstNumber() + shape.index();
        var note = evidence.note(NoteAt.of(number, shape.bar().notes().get(found.note())));
        var expected = Place.of(note.string(), found.expected());
        return Finding.of(
                        evidence,
                        "bar-nearly-repeats",
                        Severity.WORTH_A_LOOK,
                        List.of(note),
                        evidence.typed(note.note().place()),
                        evidence.typed(expected))
                .with(Repairs.place(evidence, note, expected));
    }
}
