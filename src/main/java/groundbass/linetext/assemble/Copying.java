package groundbass.linetext.assemble;

import groundbass.score.ChordAt;
import groundbass.score.Copy;
import groundbass.score.Direction;
import groundbass.score.Fraction;
import groundbass.score.Note;
import groundbass.score.Shift;
import groundbass.theory.Key;
import groundbass.theory.Transposition;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * What a bar takes over from an earlier one: what begins inside the copied beats, cut at their end and moved on the neck
 * where that was said. Reader and printer both ask here, so they agree on what need not be said again.
 *
 * @param lost notes of the earlier bar that cannot be moved so far
 * @param covered the part of the bar for which the copy speaks; empty where it says nothing
 */
public record Copying(
        List<Note> notes,
        List<Note> lost,
        List<Direction> directions,
        List<ChordAt> chords,
        Optional<Copy.Span> covered) {
    public static final Copying NOTHING = new Copying(List.of(), List.of(), List.of(), List.of(), Optional.empty());

    /** An earlier bar, with no note longer than the bar. */
    public record Original(
            Fraction from, Fraction to, List<Note> notes, List<Direction> directions, List<ChordAt> chords) {}

    /** The bar that takes over, the neck that it is played on, and the key that holds there. */
    public record Target(Fraction from, Fraction to, PlaceResolver neck, Key key) {}

    public static Copying of(Original original, Copy copy, Target target) {
        var counts = copy.counts();
        var first = counts.map(Copy.Span::from)
                .orElse(target.from())
                .max(target.from())
                .max(original.from());
        var end = counts.map(Copy.Span::to).orElse(target.to()).min(target.to()).min(original.to());
        if (!first.isBefore(end)) {
            return NOTHING;
        }
        var span = new Copy.Span(first, end);
        return new Copying(
                        original.notes().stream()
                                .filter(note -> span.contains(note.onset()))
                                .map(note -> cut(note, end))
                                .toList(),
                        List.of(),
                        original.directions().stream()
                                .filter(direction -> span.contains(direction.at()))
                                .toList(),
                        original.chords().stream()
                                .filter(chord -> span.contains(chord.at()))
                                .toList(),
                        Optional.of(span))
                .moved(copy.shift(), target);
    }

    /** Chords go along where all notes move by one interval; where they do not, nobody knows which. */
    private Copying moved(Shift shift, Target target) {
        if (shift.isNone()) {
            return this;
        }
        var tuning = target.neck().tuning();
        var there = new ArrayList<Note>();
        var gone = new ArrayList<Note>();
        for (var note : notes) {
            shift.of(note, tuning, target.neck().frets()).ifPresentOrElse(there::add, () -> gone.add(note));
        }
        var interval = shift.semitones(notes, tuning);
        var harmony = interval.isEmpty()
                ? List.<ChordAt>of()
                : chords.stream()
                        .map(chord -> new ChordAt(
                                chord.at(), Transposition.of(chord.chord(), interval.getAsInt(), target.key())))
                        .toList();
        return new Copying(List.copyOf(there), List.copyOf(gone), directions, harmony, covered);
    }

    /** What is left where count lines speak for these stretches: what begins in one is gone, what rings into one ends. */
    public Copying without(List<Copy.Span> said) {
        return new Copying(
                notes.stream()
                        .filter(note -> isFree(note.onset(), said))
                        .map(note -> cut(note, said))
                        .toList(),
                lost.stream().filter(note -> isFree(note.onset(), said)).toList(),
                directions.stream()
                        .filter(direction -> isFree(direction.at(), said))
                        .toList(),
                chords,
                covered);
    }

    Copying withoutChords() {
        return new Copying(notes, lost, directions, List.of(), covered);
    }

    private static boolean isFree(Fraction at, List<Copy.Span> said) {
        return said.stream().noneMatch(span -> span.contains(at));
    }

    private static Note cut(Note note, List<Copy.Span> said) {
        return said.stream()
                .map(Copy.Span::from)
                .filter(from -> from.isAfter(note.onset()))
                .min(Fraction::compareTo)
                .map(from -> cut(note, from))
                .orElse(note);
    }

    private static Note cut(Note note, Fraction end) {
        return note.end().isAfter(end) ? note.withLength(end.minus(note.onset())) : note;
    }
}
