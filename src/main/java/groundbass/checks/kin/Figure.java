package groundbass.checks.kin;

import groundbass.score.Bar;
import groundbass.score.Copy;
import groundbass.score.Fraction;
import groundbass.score.Line;
import groundbass.score.Meter;
import groundbass.score.Note;
import groundbass.score.NoteAt;
import groundbass.score.Tuning;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** What is played in some beats of a bar. */
public final class Figure {
    private static final int FEWEST = 2;
    private static final int DEAD = -1;

    private final Tuning tuning;
    private final int bar;
    private final Fraction from;
    private final Fraction length;
    private final List<Note> notes;
    private final int[] pitches;

    private Figure(Tuning tuning, int bar, Fraction from, Fraction length, List<Note> notes) {
        this.tuning = tuning;
        this.bar = bar;
        this.from = from;
        this.length = length;
        this.notes = List.copyOf(notes);
        this.pitches =
                notes.stream().mapToInt(note -> note.midi(tuning).orElse(DEAD)).toArray();
    }

    /** Which beats of a bar. */
    private record Beats(Fraction from, Fraction length) {}

    /**
     * All beats that follow one another in one bar, those of the same beats together in the order of their bars. A bar that
     * is written as a copy says nothing that its bar does not say.
     */
    public static List<List<Figure>> byBeats(Line line) {
        Map<Beats, List<Figure>> figures = new LinkedHashMap<>();
        var inForce = line.inForce();
        for (int i = 0; i < line.bars().size(); i++) {
            var bar = line.bars().get(i);
            if (!bar.isPickup() && bar.copy().filter(Copy::isWhole).isEmpty()) {
                add(
                        line.header().tuning(),
                        line.firstNumber() + i,
                        bar,
                        inForce.get(i).meter(),
                        figures);
            }
        }
        return List.copyOf(figures.values());
    }

    private static void add(Tuning tuning, int number, Bar bar, Meter meter, Map<Beats, List<Figure>> figures) {
        var starts = new ArrayList<>(meter.beatStarts());
        starts.removeIf(start -> !start.isBefore(bar.to()));
        starts.add(bar.to());
        for (int from = 0; from < starts.size(); from++) {
            for (int to = from + 1; to < starts.size(); to++) {
                var figure = between(tuning, number, bar, starts.get(from), starts.get(to));
                if (figure.size() >= FEWEST) {
                    figures.computeIfAbsent(new Beats(figure.from, figure.length), beats -> new ArrayList<>())
                            .add(figure);
                }
            }
        }
    }

    private static Figure between(Tuning tuning, int number, Bar bar, Fraction start, Fraction end) {
        var within = bar.notes().stream()
                .filter(note -> !note.onset().isBefore(start) && note.onset().isBefore(end))
                .toList();
        return new Figure(tuning, number, start, end.minus(start), within);
    }

    Tuning tuning() {
        return tuning;
    }

    /** The number of its bar. */
    public int bar() {
        return bar;
    }

    /** Where it begins, from the beginning of the bar. */
    public Fraction from() {
        return from;
    }

    public Fraction length() {
        return length;
    }

    /** Those that begin in it, as the bar has them. */
    public List<Note> notes() {
        return notes;
    }

    int size() {
        return notes.size();
    }

    boolean hasPitch(int index) {
        return pitches[index] != DEAD;
    }

    /** The MIDI number of a note that is not dead. */
    int pitch(int index) {
        return pitches[index];
    }

    Note note(int index) {
        return notes.get(index);
    }

    /** When a note begins, from the beginning of the figure. */
    Fraction onset(int index) {
        return notes.get(index).onset().minus(from);
    }

    Figure without(int index) {
        var others = new ArrayList<>(notes);
        others.remove(index);
        return new Figure(tuning, bar, from, length, others);
    }

    /** Where a note of it stands in the line. */
    public NoteAt at(int index) {
        return NoteAt.of(bar, notes.get(index));
    }
}
