package groundbass.groove;

import groundbass.performance.Performance;
import groundbass.performance.TimedNote;
import groundbass.score.Fraction;
import groundbass.score.Note;
import groundbass.score.Ornaments.Mark;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;

/**
 * A kick that takes its cue from the line (rule: kick-and-line): one that meets no note moves to the note beside it, and
 * strong notes that it misses get one, but for backbeats.
 */
final class KickCue {
    private static final int MOST_ADDED = 2;

    /** A note from here on can be strong. */
    private static final Fraction LONG = Fraction.of(1, 8);

    private final Map<Where, List<Note>> notes = new HashMap<>();

    private record Where(int bar, int pass, int round) {}

    KickCue(Performance performance) {
        for (var note : performance.notes()) {
            if (isHeard(note)) {
                var origin = note.origin();
                notes.computeIfAbsent(
                                new Where(origin.written().bar(), origin.pass(), origin.round()),
                                where -> new ArrayList<>())
                        .add(note.note());
            }
        }
    }

    private static boolean isHeard(TimedNote note) {
        return !note.isContinued()
                && !note.isDead()
                && !note.grace()
                && !note.note().has(Mark.GHOST);
    }

    /** The strokes of the kick by column. */
    Map<Integer, Stroke> of(PatternBar bar) {
        var written = new TreeMap<Integer, Stroke>();
        for (int column = 0; column < bar.groove().columns(); column++) {
            var stroke = bar.stroke(Piece.KICK, column);
            if (stroke != Stroke.NONE) {
                written.put(column, stroke);
            }
        }
        if (!bar.groove().style().followsLine() || bar.groove().feel() == Groove.MACHINE || written.isEmpty()) {
            return written;
        }
        var struck = struck(bar);
        var kicks = moved(written, struck);
        added(bar, struck, kicks);
        return kicks;
    }

    /** The longest note that the line strikes in each column. */
    private TreeMap<Integer, Note> struck(PatternBar bar) {
        var struck = new TreeMap<Integer, Note>();
        var here = new Where(bar.bar().number(), bar.bar().pass(), bar.bar().round());
        for (var note : notes.getOrDefault(here, List.of())) {
            if (note.onset().isOnGrid(bar.groove().column())) {
                int column = (int) note.onset().dividedBy(bar.groove().column()).floor();
                struck.merge(column, note, (one, other) -> length(one).compareTo(length(other)) < 0 ? other : one);
            }
        }
        return struck;
    }

    private static Fraction length(Note note) {
        return note.end().minus(note.onset());
    }

    /** An accent stays: the drummer leads there. */
    private static TreeMap<Integer, Stroke> moved(Map<Integer, Stroke> written, Map<Integer, Note> struck) {
        var kicks = new TreeMap<>(written);
        written.forEach((column, stroke) -> {
            if (stroke != Stroke.ACCENT && !struck.containsKey(column)) {
                for (int beside : new int[] {column - 1, column + 1}) {
                    if (struck.containsKey(beside) && kicks.containsKey(column) && !kicks.containsKey(beside)) {
                        kicks.remove(column);
                        kicks.put(beside, stroke);
                    }
                }
            }
        });
        return kicks;
    }

    private static void added(PatternBar bar, Map<Integer, Note> struck, Map<Integer, Stroke> kicks) {
        struck.entrySet().stream()
                .filter(each -> !kicks.containsKey(each.getKey()) && isStrong(each.getValue()))
                .filter(each -> !isBackbeat(bar, each.getKey()))
                .sorted(Comparator.comparing((Map.Entry<Integer, Note> each) -> length(each.getValue()))
                        .reversed()
                        .thenComparing(Map.Entry::getKey))
                .limit(MOST_ADDED)
                .forEach(each -> kicks.put(each.getKey(), Stroke.NORMAL));
    }

    private static boolean isStrong(Note note) {
        boolean onEighth = note.onset().isOnGrid(LONG) && !length(note).isBefore(LONG);
        return onEighth || note.has(Mark.ACCENT) || note.has(Mark.MARCATO);
    }

    private static boolean isBackbeat(PatternBar bar, int column) {
        return bar.stroke(Piece.SNARE, column) == Stroke.ACCENT || bar.stroke(Piece.RIM, column) == Stroke.ACCENT;
    }
}
