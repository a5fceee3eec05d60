package groundbass.score;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** Some bars of a line as a line of their own: to be heard or shown alone. Bars are counted from 1 in it. */
public final class Extract {
    private final Line line;
    private final int first;
    private final int end;
    private final Set<Integer> played = new HashSet<>();

    private Extract(Line line, int first, int end) {
        this.line = line;
        this.first = first;
        this.end = end;
    }

    /**
     * The bars with these numbers, as far as the line has them, played once through without repeats. What holds there is
     * said at the head; what sounds on past the last one is cut, and what was hammered from a note outside is struck.
     *
     * @return empty where the line has none of them
     */
    public static Optional<Line> bars(Line line, int firstNumber, int lastNumber) {
        int first = Math.max(0, line.indexOf(firstNumber));
        int end = Math.min(line.bars().size(), line.indexOf(lastNumber) + 1);
        return first < end ? Optional.of(new Extract(line, first, end).line()) : Optional.empty();
    }

    /**
     * Some beats of one bar as a bar of their own, counted from 1 anew.
     *
     * @param first, last counts; the beats that they lie in are taken whole
     * @return empty where the bar has none of them
     */
    public static Optional<Line> counts(Line line, int bar, Count first, Count last) {
        return bars(line, bar, bar).flatMap(alone -> {
            var meter = alone.header().meter();
            var whole = alone.bars().get(0);
            var from = meter.beatStart(first.offset(meter)).max(whole.from());
            var to = meter.beatEnd(last.offset(meter)).min(whole.to());
            return from.isBefore(to)
                    ? Optional.of(new Line(alone.header(), List.of(beats(whole, from, to))))
                    : Optional.empty();
        });
    }

    private static Bar beats(Bar bar, Fraction from, Fraction to) {
        var span = new Copy.Span(from, to);
        var notes = bar.notes().stream()
                .filter(note -> span.contains(note.onset()))
                .map(note -> moved(note, from, to))
                .toList();
        var chords = bar.chords().stream()
                .filter(chord -> span.contains(chord.at()))
                .map(chord -> new ChordAt(chord.at().minus(from), chord.chord()))
                .toList();
        return new Bar(
                Fraction.ZERO, to.minus(from), bar.changes(), Repeats.NONE, chords, notes, List.of(), Optional.empty());
    }

    private static Note moved(Note note, Fraction from, Fraction to) {
        return new Note(
                note.onset().minus(from),
                note.length().min(to.minus(note.onset())),
                note.place(),
                note.pluck(),
                note.arrival(),
                note.ornaments());
    }

    private Line line() {
        var now = line.inForce().get(first);
        var header = line.header()
                .withTitle("")
                .with(now.key())
                .with(now.meter())
                .with(now.tempo())
                .with(now.feel())
                .with(now.style());
        var bars = new ArrayList<Bar>();
        for (int i = first; i < end; i++) {
            bars.add(bar(i));
        }
        return new Line(header, bars);
    }

    private Bar bar(int index) {
        var bar = line.bars().get(index);
        var alone = bar.with(Repeats.NONE).withNotes(notes(index)).writtenOut();
        return index == first ? alone.with(opening(bar.changes())) : alone;
    }

    /** Of the changes at the first bar, the header says all that it can. */
    private static Changes opening(Changes changes) {
        var kept = changes.section().map(Changes.NONE::withSection).orElse(Changes.NONE);
        return changes.slowingTo().map(kept::withSlowingTo).orElse(kept);
    }

    private List<Note> notes(int index) {
        var left = length(index);
        var bar = line.bars().get(index);
        var style = line.inForce().get(index).style();
        return bar.notes().stream()
                .map(note -> note.withLength(
                        note.length().min(left.minus(note.onset().minus(bar.from())))))
                .map(note -> struck(note, style))
                .toList();
    }

    /** From the start of a bar to the end of the extract. */
    private Fraction length(int index) {
        return Fraction.sum(
                line.bars().subList(index, end).stream().map(Bar::length).toList());
    }

    private Note struck(Note note, Technique style) {
        boolean source = played.contains(note.string());
        played.add(note.string());
        boolean orphan =
                !source && note.arrival().filter(arrival -> !arrival.isGrace()).isPresent();
        return orphan ? note.struck(style) : note;
    }
}
