package groundbass.linetext.assemble;

import groundbass.score.ChordAt;
import groundbass.score.Copy;
import groundbass.score.Direction;
import groundbass.score.Fraction;
import groundbass.score.Note;
import java.util.List;
import java.util.Optional;

/**
 * What a bar takes over from an earlier one: what begins inside the copied beats, cut at their end. Reader and printer
 * both ask here, so they agree on what need not be said again.
 *
 * @param covered the part of the bar for which the copy speaks; empty where it says nothing
 */
public record Copying(List<Note> notes, List<Direction> directions, List<ChordAt> chords, Optional<Copy.Span> covered) {
    public static final Copying NOTHING = new Copying(List.of(), List.of(), List.of(), Optional.empty());

    /** An earlier bar, with no note longer than the bar. */
    public record Original(
            Fraction from, Fraction to, List<Note> notes, List<Direction> directions, List<ChordAt> chords) {}

    /** What a bar from {@code from} to {@code to} takes over. */
    public static Copying of(Original original, Optional<Copy.Span> counts, Fraction from, Fraction to) {
        var first = counts.map(Copy.Span::from).orElse(from).max(from).max(original.from());
        var end = counts.map(Copy.Span::to).orElse(to).min(to).min(original.to());
        if (!first.isBefore(end)) {
            return NOTHING;
        }
        var span = new Copy.Span(first, end);
        return new Copying(
                original.notes().stream()
                        .filter(note -> span.contains(note.onset()))
                        .map(note -> cut(note, end))
                        .toList(),
                original.directions().stream()
                        .filter(direction -> span.contains(direction.at()))
                        .toList(),
                original.chords().stream()
                        .filter(chord -> span.contains(chord.at()))
                        .toList(),
                Optional.of(span));
    }

    /** What is left where count lines speak for these stretches: what begins in one is gone, what rings into one ends. */
    public Copying without(List<Copy.Span> said) {
        return new Copying(
                notes.stream()
                        .filter(note -> isFree(note.onset(), said))
                        .map(note -> cut(note, said))
                        .toList(),
                directions.stream()
                        .filter(direction -> isFree(direction.at(), said))
                        .toList(),
                chords,
                covered);
    }

    Copying withoutChords() {
        return new Copying(notes, directions, List.of(), covered);
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
