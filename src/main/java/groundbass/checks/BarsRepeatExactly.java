package groundbass.checks;

import groundbass.analysis.ToneRole;
import groundbass.remark.Severity;
import groundbass.score.Bar;
import groundbass.score.Fraction;
import groundbass.score.Line;
import groundbass.score.Note;
import groundbass.score.NoteAt;
import groundbass.score.Place;
import groundbass.score.Place.Fretted;
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

    /** A bar and the frets of its notes, -1 where dead. */
    private record Shape(int index, Bar bar, List<Integer> frets) {
        static Shape of(int index, Bar bar) {
            var frets = bar.notes().stream()
                    .map(note -> note.place() instanceof Fretted fretted ? fretted.fret() : -1)
                    .toList();
            return new Shape(index, bar, frets);
        }

        /** Whether the stopped notes of another bar all lie the same number of frets away. */
        boolean isShapeOf(Shape other) {
            int shift = Integer.MIN_VALUE;
            for (int i = 0; i < frets.size(); i++) {
                int here = frets.get(i);
                int there = other.frets.get(i);
                if (here > 0 && there > 0) {
                    if (shift != Integer.MIN_VALUE && there - here != shift) {
                        return false;
                    }
                    shift = there - here;
                }
            }
            return true;
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
        return groups.values().stream().filter(group -> group.size() > 2).flatMap(group -> findings(evidence, group));
    }

    private static List<Shape> shapes(Line line) {
        return IntStream.range(0, line.bars().size())
                .filter(i -> line.bars().get(i).notes().size() >= FEWEST_NOTES)
                .mapToObj(i -> Shape.of(i, line.bars().get(i)))
                .toList();
    }

    private static Stream<Finding> findings(Evidence evidence, List<Shape> group) {
        var patterns = group.stream().filter(shape -> isConfirmed(group, shape)).toList();
        return group.stream().flatMap(shape -> finding(evidence, patterns, shape).stream());
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

    private static Optional<Finding> finding(Evidence evidence, List<Shape> patterns, Shape shape) {
        return patterns.stream()
                .filter(pattern -> !pattern.isShapeOf(shape))
                .flatMap(pattern -> deviation(pattern, shape).stream())
                .filter(found -> isSlip(evidence, shape, found))
                .findFirst()
                .map(found -> finding(evidence, shape, found));
    }

    /** Whether another bar has the same shape. */
    private static boolean isConfirmed(List<Shape> group, Shape shape) {
        return group.stream().anyMatch(other -> other.index() != shape.index() && shape.isShapeOf(other));
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
        boolean belongs = tone.filter(each -> each.role().isChordTone() || each.role() == ToneRole.APPROACH)
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
