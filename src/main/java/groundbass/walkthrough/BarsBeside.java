package groundbass.walkthrough;

import groundbass.score.Note;
import groundbass.score.Tuning;
import groundbass.walkthrough.Earlier.Moved;
import groundbass.walkthrough.Earlier.Same;
import groundbass.walkthrough.stretch.Stretch;
import groundbass.writing.Element;
import groundbass.writing.Element.Chord;
import groundbass.writing.Head;
import groundbass.writing.Voice;
import groundbass.writing.WrittenBar;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;

/** Two bars of one meter laid beside each other: which beats of the later are played as those of the earlier. */
final class BarsBeside {
    /** Fewer notes in a row are told as fast as a reference to them. */
    private static final int FEWEST = 3;

    private final WrittenBar earlier;
    private final WrittenBar later;
    private final Tuning tuning;
    private final Set<Stretch> before;
    private final List<Stretch> stretches;

    BarsBeside(WrittenBar earlier, WrittenBar later, Tuning tuning) {
        this.earlier = earlier;
        this.later = later;
        this.tuning = tuning;
        this.before = Set.copyOf(Stretch.of(earlier));
        this.stretches = Stretch.of(later);
    }

    /** The ways that the hand may have gone from one bar to the other, the shortest first. */
    List<HandMove> moves() {
        Set<HandMove> moves = new HashSet<>();
        moves.add(HandMove.NONE);
        for (var note : later.bar().notes()) {
            earlier.bar().notes().stream()
                    .filter(other -> other.onset().equals(note.onset()))
                    .map(other -> HandMove.between(other, note))
                    .forEach(moves::add);
        }
        return moves.stream()
                .sorted(Comparator.comparingInt(HandMove::far)
                        .thenComparingInt(HandMove::strings)
                        .thenComparingInt(HandMove::frets))
                .toList();
    }

    /** The beats that are played as before on this way; empty where there are none, or they do not all sound moved alike. */
    Optional<Leaning> alike(HandMove move) {
        var beats = rows(move).stream()
                .filter(row -> notes(row, later).size() >= FEWEST)
                .dropWhile(row -> !move.equals(HandMove.NONE) && !isShape(row))
                .toList();
        return beats.isEmpty() ? Optional.empty() : on(move, beats).map(on -> new Leaning(on, beats));
    }

    /** One place alone is no shape that a hand could move, unless it has come with one that was moved. */
    private boolean isShape(Stretch row) {
        return notes(row, later).stream()
                        .filter(note -> !note.isDead())
                        .map(Note::place)
                        .distinct()
                        .count()
                > 1;
    }

    private Optional<Earlier> on(HandMove move, List<Stretch> beats) {
        int number = earlier.inForce().number();
        return move.equals(HandMove.NONE)
                ? Optional.of(new Same(number))
                : SoundingInterval.between(notes(beats, earlier), notes(beats, later), tuning)
                        .map(interval -> new Moved(number, move.strings(), move.frets(), interval.octaves()));
    }

    /** How many notes begin in beats that are played as before. */
    int notes(Leaning leaning) {
        return notes(leaning.beats(), later).size();
    }

    /** Stretches that are alike, those that follow one another joined. */
    private List<Stretch> rows(HandMove move) {
        var rows = new ArrayList<Stretch>();
        for (var stretch : stretches) {
            if (!before.contains(stretch) || !isAlike(stretch, move)) {
                continue;
            }
            int last = rows.size() - 1;
            if (last >= 0 && rows.get(last).to().equals(stretch.from())) {
                rows.set(last, new Stretch(rows.get(last).from(), stretch.to(), Stretch.Kind.PLAY));
            } else {
                rows.add(stretch);
            }
        }
        return rows;
    }

    private boolean isAlike(Stretch stretch, HandMove move) {
        return earlier.voices().size() == later.voices().size()
                && IntStream.range(0, later.voices().size())
                        .allMatch(i -> isAlike(
                                stretch,
                                move,
                                earlier.voices().get(i),
                                later.voices().get(i)));
    }

    private boolean isAlike(Stretch stretch, HandMove move, Voice one, Voice other) {
        var before = stretch.elements(one);
        var after = stretch.elements(other);
        return before.size() == after.size()
                && IntStream.range(0, after.size()).allMatch(i -> isAlike(before.get(i), after.get(i), move));
    }

    private boolean isAlike(Element one, Element other, HandMove move) {
        if (!one.onset().equals(other.onset())
                || !one.length().equals(other.length())
                || !one.value().equals(other.value())) {
            return false;
        }
        if (one instanceof Chord before && other instanceof Chord after) {
            return before.heads().size() == after.heads().size()
                    && IntStream.range(0, after.heads().size())
                            .allMatch(i ->
                                    isAlike(before.heads().get(i), after.heads().get(i), move));
        }
        return one.getClass() == other.getClass();
    }

    private boolean isAlike(Head one, Head other, HandMove move) {
        return one.tiedFrom() == other.tiedFrom()
                && move.of(one.note(), tuning).filter(other.note()::equals).isPresent();
    }

    private static List<Note> notes(List<Stretch> beats, WrittenBar bar) {
        return beats.stream().flatMap(row -> notes(row, bar).stream()).toList();
    }

    private static List<Note> notes(Stretch row, WrittenBar bar) {
        return bar.bar().notes().stream()
                .filter(note -> row.contains(note.onset()))
                .toList();
    }
}
