package groundbass.walkthrough;

import groundbass.score.Fraction;
import groundbass.score.InForce;
import groundbass.score.Line;
import groundbass.score.Note;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.TreeSet;
import java.util.stream.IntStream;

/**
 * How fast notes follow one another at full tempo, and where that stands out. Notes that are hammered, pulled or slid to
 * are no strokes, but part of a run.
 */
final class Pace {
    /** Strokes a second from which on something is quick (common practice, no source). */
    private static final double QUICK = 6;

    /** Bars are the quick ones where they are no more than one of so many (common practice, no source). */
    private static final int QUICK_OF = 2;

    private static final int FEWEST_IN_RUN = 6;

    /** Seconds between two notes that are equal but for the rounding of their sums. */
    private static final double EQUAL = 1e-9;

    private final List<Onset> onsets = new ArrayList<>();
    private final double least;
    private final double strokesPerSecond;
    private final int bars;

    /** When something is struck, in the bar of an index, and how many seconds after what was struck before it. */
    private record Onset(int bar, Fraction at, double after) {}

    /** Indexes of bars that follow one another. */
    record Bars(int first, int last) {}

    /** So many notes without a rest, from the bar of one index to that of another; the last begins at {@code to}. */
    private record Row(int first, int last, Fraction to, int notes) {}

    /** The same within one bar. */
    record Run(int bar, Fraction to, int notes) {}

    Pace(Line line) {
        var inForce = line.inForce();
        double gap = Double.POSITIVE_INFINITY;
        double most = 0;
        for (int i = 0; i < line.bars().size(); i++) {
            var bar = line.bars().get(i);
            var here = inForce.get(i);
            Fraction last = bar.from();
            for (var at : new TreeSet<>(bar.notes().stream().map(Note::onset).toList())) {
                onsets.add(new Onset(i, at, gap + here.tempo().seconds(at.minus(last))));
                gap = 0;
                last = at;
            }
            gap += here.tempo().seconds(bar.to().minus(last));
            most = Math.max(most, most(here, bar.notes()));
        }
        this.bars = line.bars().size();
        this.strokesPerSecond = most;
        this.least = onsets.stream().mapToDouble(Onset::after).min().orElse(Double.POSITIVE_INFINITY);
    }

    private static double most(InForce inForce, List<Note> notes) {
        var meter = inForce.meter();
        return meter.beatStarts().stream()
                .mapToDouble(start -> notes.stream()
                                .filter(note -> note.pluck().isPresent())
                                .map(Note::onset)
                                .filter(onset -> meter.beatStart(onset).equals(start))
                                .distinct()
                                .count()
                        / inForce.tempo().seconds(meter.beatEnd(start).minus(start)))
                .max()
                .orElse(0);
    }

    /** Of the beat that has most; 0 in a line without notes. */
    double strokesPerSecond() {
        return strokesPerSecond;
    }

    /** The bars in which notes follow one another faster than in any other, where they stand side by side. */
    Optional<Bars> quickest() {
        var quick = IntStream.range(1, onsets.size())
                .filter(i ->
                        isLeast(i) && onsets.get(i).bar() == onsets.get(i - 1).bar())
                .map(i -> onsets.get(i).bar())
                .distinct()
                .toArray();
        if (quick.length == 0 || 1 / least < QUICK || quick.length * QUICK_OF > bars) {
            return Optional.empty();
        }
        int last = quick[quick.length - 1];
        return last - quick[0] + 1 == quick.length ? Optional.of(new Bars(quick[0], last)) : Optional.empty();
    }

    /** The longest run of notes that are as quick as any, where no other is as long, quickness is everywhere, and it keeps to a bar. */
    Optional<Run> longest() {
        if (1 / least < QUICK || quickest().isPresent()) {
            return Optional.empty();
        }
        var runs = runs();
        int most = runs.stream().mapToInt(Row::notes).max().orElse(0);
        var longest = runs.stream().filter(run -> run.notes() == most).toList();
        return Optional.of(longest)
                .filter(all -> most >= FEWEST_IN_RUN && all.size() == 1)
                .map(all -> all.get(0))
                .filter(row -> row.first() == row.last())
                .map(row -> new Run(row.last(), row.to(), row.notes()));
    }

    /** Whether nothing begins between the last note of a run and a moment of its bar. */
    boolean endsBefore(Run run, Fraction to) {
        return onsets.stream()
                .filter(onset -> onset.bar() == run.bar())
                .noneMatch(onset -> onset.at().isAfter(run.to()) && onset.at().isBefore(to));
    }

    private List<Row> runs() {
        var runs = new ArrayList<Row>();
        int start = 0;
        for (int i = 1; i <= onsets.size(); i++) {
            if (i == onsets.size() || !isLeast(i)) {
                var last = onsets.get(i - 1);
                runs.add(new Row(onsets.get(start).bar(), last.bar(), last.at(), i - start));
                start = i;
            }
        }
        return runs;
    }

    private boolean isLeast(int index) {
        return onsets.get(index).after() < least + EQUAL;
    }
}
