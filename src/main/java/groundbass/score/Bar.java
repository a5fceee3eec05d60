package groundbass.score;

import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * One bar: its notes, each with its own onset and length, and what is written around them. Rests, chords and voices
 * are derived. Notes stand by onset, lowest string first; times count from the bar's first count, so a pickup's notes
 * begin at {@code from}. How a chord is spread is said at each of its notes: it is all of theirs where it is one's.
 *
 * @param from zero, or where a pickup begins
 * @param to the bar's length, or less where the bar is cut short
 */
public record Bar(
        Fraction from,
        Fraction to,
        Changes changes,
        Repeats repeats,
        List<ChordAt> chords,
        List<Note> notes,
        List<Direction> directions,
        Optional<Copy> copy) {
    public static final int MOST_NOTES = 200;
    public static final int MOST_DIRECTIONS = 200;

    private static final Comparator<Note> ORDER =
            Comparator.comparing(Note::onset).thenComparing(Note::string, Comparator.reverseOrder());

    public Bar {
        Objects.requireNonNull(changes);
        Objects.requireNonNull(repeats);
        Objects.requireNonNull(copy);
        if (from.isNegative() || !from.isBefore(to)) {
            throw new IllegalArgumentException("a bar runs forward: " + from + " to " + to);
        }
        chords = chords.stream().sorted(Comparator.comparing(ChordAt::at)).toList();
        notes = Chords.agreed(notes.stream().sorted(ORDER).toList());
        directions = directions.stream().sorted(directionOrder()).toList();
        checkInside(from, to, chords, notes, directions);
        checkStrings(notes);
        checkOnce(chords, directions);
        if (notes.size() > MOST_NOTES || directions.size() > MOST_DIRECTIONS) {
            throw new IllegalArgumentException("a bar has at most " + MOST_NOTES + " notes and " + MOST_DIRECTIONS
                    + " directions: " + notes.size() + ", " + directions.size());
        }
    }

    /** A whole bar of these notes and nothing else. */
    public static Bar of(Meter meter, List<Note> notes) {
        return new Bar(
                Fraction.ZERO,
                meter.length(),
                Changes.NONE,
                Repeats.NONE,
                List.of(),
                notes,
                List.of(),
                Optional.empty());
    }

    public Fraction length() {
        return to.minus(from);
    }

    public boolean isPickup() {
        return from.isPositive();
    }

    public Bar withNotes(List<Note> newNotes) {
        return new Bar(from, to, changes, repeats, chords, newNotes, directions, copy);
    }

    public Bar with(Changes newChanges) {
        return new Bar(from, to, newChanges, repeats, chords, notes, directions, copy);
    }

    public Bar with(Repeats newRepeats) {
        return new Bar(from, to, changes, newRepeats, chords, notes, directions, copy);
    }

    public Bar withChords(List<ChordAt> newChords) {
        return new Bar(from, to, changes, repeats, newChords, notes, directions, copy);
    }

    public Bar withDirections(List<Direction> newDirections) {
        return new Bar(from, to, changes, repeats, chords, notes, newDirections, copy);
    }

    public Bar with(Copy newCopy) {
        return new Bar(from, to, changes, repeats, chords, notes, directions, Optional.of(newCopy));
    }

    /** This bar as if it had been typed note for note. */
    public Bar writtenOut() {
        return new Bar(from, to, changes, repeats, chords, notes, directions, Optional.empty());
    }

    public Bar between(Fraction newFrom, Fraction newTo) {
        return new Bar(newFrom, newTo, changes, repeats, chords, notes, directions, copy);
    }

    private static Comparator<Direction> directionOrder() {
        return Comparator.comparing(Direction::at).thenComparing(Bar::rank).thenComparing(Direction::toString);
    }

    /** A dynamic, then the hairpin that begins with it, then words. */
    private static int rank(Direction direction) {
        return direction instanceof Direction.Loudness ? 0 : direction instanceof Direction.Hairpin ? 1 : 2;
    }

    private static void checkInside(
            Fraction from, Fraction to, List<ChordAt> chords, List<Note> notes, List<Direction> directions) {
        var times = Stream.of(
                        chords.stream().map(ChordAt::at),
                        notes.stream().map(Note::onset),
                        directions.stream().map(Direction::at))
                .flatMap(each -> each);
        times.filter(at -> at.isBefore(from) || !at.isBefore(to)).findFirst().ifPresent(at -> {
            throw new IllegalArgumentException("outside the bar of " + from + " to " + to + ": " + at);
        });
    }

    /** At one moment there is one chord, one loudness, one hairpin, and no text twice. */
    private static void checkOnce(List<ChordAt> chords, List<Direction> directions) {
        long chordTimes = chords.stream().map(ChordAt::at).distinct().count();
        boolean textTwice = directions.stream().distinct().count() < directions.size();
        boolean loudnessTwice = isTwice(directions, Direction.Loudness.class);
        boolean hairpinTwice = isTwice(directions, Direction.Hairpin.class);
        if (chordTimes < chords.size() || loudnessTwice || hairpinTwice || textTwice) {
            throw new IllegalArgumentException("said twice at one moment: " + chords + directions);
        }
    }

    private static boolean isTwice(List<Direction> directions, Class<? extends Direction> kind) {
        var times =
                directions.stream().filter(kind::isInstance).map(Direction::at).toList();
        return times.stream().distinct().count() < times.size();
    }

    private static void checkStrings(List<Note> notes) {
        Map<Integer, Note> last = new HashMap<>();
        for (var note : notes) {
            var before = last.put(note.string(), note);
            if (before != null && before.end().isAfter(note.onset())) {
                throw new IllegalArgumentException("string " + note.string() + " still sounds at " + note.onset());
            }
        }
    }
}
