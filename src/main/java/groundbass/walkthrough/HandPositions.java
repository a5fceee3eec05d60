package groundbass.walkthrough;

import groundbass.score.Arrival;
import groundbass.score.Fraction;
import groundbass.score.Line;
import groundbass.score.Note;
import groundbass.score.Place.Fretted;
import groundbass.score.Position;
import groundbass.walkthrough.Earlier.Moved;
import groundbass.walkthrough.stretch.Stretch;
import groundbass.walkthrough.words.Wording;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.NavigableMap;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/**
 * Where the index finger lies, told before the first note that is stopped from there: at the beginning of the line, and
 * where the hand moves. Bars and beats that are told by earlier ones have the places of the earlier ones, moved with the
 * shape. A slide takes the hand along without a word.
 */
final class HandPositions {
    /** What is told without it. */
    static final HandPositions NONE = new HandPositions();

    private static final int FINGERS = 4;

    /** For each bar where the index finger lies at each moment at which something is stopped. */
    private final List<TreeMap<Fraction, Integer>> lying;

    private final Map<Integer, List<Move>> moves = new HashMap<>();
    private final Set<Position> heard = new HashSet<>();
    private int told = HandPath.NOWHERE;
    private int said = HandPath.NOWHERE;

    /**
     * The index finger comes to a fret.
     *
     * @param first whether it was nowhere before
     * @param again whether the bar that tells this one says so as well
     */
    private record Move(Fraction at, int fret, boolean first, boolean again) {}

    private HandPositions() {
        lying = List.of();
    }

    HandPositions(Line line, EarlierBars earlier, Leanings leanings) {
        var alone = lying(line, HandPath.of(line, Map.of()), earlier, leanings);
        lying = lying(line, HandPath.of(line, borrowed(alone, earlier, leanings)), earlier, leanings);
        var before = BarBefore.all(line);
        for (int i = 0; i < line.bars().size(); i++) {
            if (i > 0 && before.get(i) != i - 1) {
                said = last(before.get(i)).orElse(said);
                told = said;
            }
            tell(line, i, earlier.of(i));
        }
    }

    /** Where it lies at the end of a bar or, where nothing is stopped there, before it. */
    private OptionalInt last(int bar) {
        return IntStream.iterate(bar, i -> i >= 0, i -> i - 1)
                .filter(i -> !lying.get(i).isEmpty())
                .map(i -> lying.get(i).lastEntry().getValue())
                .findFirst();
    }

    /** Where it lies in what is told by earlier bars, so that it comes there and goes on from there the shortest way. */
    private static Map<Position, Integer> borrowed(
            List<TreeMap<Fraction, Integer>> alone, EarlierBars earlier, Leanings leanings) {
        var borrowed = new HashMap<Position, Integer>();
        for (int i = 0; i < alone.size(); i++) {
            int bar = i;
            alone.get(i).forEach((at, fret) -> {
                boolean told = earlier.of(bar).isPresent()
                        || leanings.of(bar).flatMap(each -> each.covering(at)).isPresent();
                if (told && fret != HandPath.NOWHERE) {
                    borrowed.put(new Position(bar, at), fret);
                }
            });
        }
        return borrowed;
    }

    private static List<TreeMap<Fraction, Integer>> lying(
            Line line, NavigableMap<Position, Integer> path, EarlierBars earlier, Leanings leanings) {
        var bars = new ArrayList<TreeMap<Fraction, Integer>>();
        for (int i = 0; i < line.bars().size(); i++) {
            var here = new TreeMap<Fraction, Integer>();
            path.subMap(new Position(i, Fraction.ZERO), new Position(i + 1, Fraction.ZERO))
                    .forEach((position, fret) -> here.put(position.at(), fret));
            var told = earlier.of(i);
            var leaning = leanings.of(i);
            here.replaceAll((at, fret) -> told.or(
                            () -> leaning.filter(each -> each.covering(at).isPresent())
                                    .map(Leaning::on))
                    .flatMap(on -> there(bars.get(on.number() - line.firstNumber()), on, at))
                    .orElse(fret));
            bars.add(here);
        }
        return bars;
    }

    /** Where it lies at this time of an earlier bar, moved with the shape. */
    private static Optional<Integer> there(Map<Fraction, Integer> bar, Earlier on, Fraction at) {
        int frets = on instanceof Moved moved ? moved.frets() : 0;
        return Optional.ofNullable(bar.get(at))
                .filter(fret -> fret != HandPath.NOWHERE && fret + frets > HandPath.NOWHERE)
                .map(fret -> fret + frets);
    }

    private void tell(Line line, int index, Optional<Earlier> earlier) {
        boolean fresh = true;
        for (var entry : lying.get(index).entrySet()) {
            int fret = entry.getValue();
            boolean comes = fret != told && fret != HandPath.NOWHERE;
            var at = entry.getKey();
            if (comes && !isSlidTo(line, index, at) && (earlier.isEmpty() || fresh)) {
                boolean again = earlier.filter(on -> isSaid(on.number() - line.firstNumber(), at))
                        .isPresent();
                moves.computeIfAbsent(index, i -> new ArrayList<>())
                        .add(new Move(at, fret, said == HandPath.NOWHERE, again));
                said = fret;
            }
            if (fret == said) {
                heard.add(new Position(index, at));
            }
            told = fret;
            fresh = false;
        }
    }

    private boolean isSaid(int index, Fraction at) {
        return moves.getOrDefault(index, List.of()).stream()
                .anyMatch(move -> move.at().equals(at));
    }

    /** Whether a bar that is told by an earlier one with those before it needs words of its own on the hand. */
    boolean isNews(int bar) {
        return moves.getOrDefault(bar, List.of()).stream().anyMatch(move -> !move.again());
    }

    private static boolean isSlidTo(Line line, int index, Fraction at) {
        return line.bars().get(index).notes().stream()
                .filter(note -> note.onset().equals(at))
                .flatMap(note -> note.arrival().stream())
                .anyMatch(arrival -> arrival.kind() == Arrival.Kind.SLIDE && !arrival.isGrace());
    }

    /** Whether a note has the finger that a hand has there which lies where it was told last, one finger a fret. */
    boolean isUnderFinger(int bar, Note note) {
        return note.place() instanceof Fretted place
                && heard.contains(new Position(bar, note.onset()))
                && finger(bar, note.onset(), place.fret())
                        .equals(note.ornaments().finger());
    }

    /** The finger that comes down on a fret at this time of a bar, one finger a fret. */
    OptionalInt finger(int bar, Fraction at, int fret) {
        int index = bar < lying.size() ? lying.get(bar).getOrDefault(at, HandPath.NOWHERE) : HandPath.NOWHERE;
        int finger = fret - index + 1;
        return index != HandPath.NOWHERE && finger >= 1 && finger <= FINGERS
                ? OptionalInt.of(finger)
                : OptionalInt.empty();
    }

    /**
     * In a sentence where it goes for the first note that is stopped in the stretch that begins the bar of this index; or
     * where it comes down for the first time, later in the bar: there it waits from the beginning.
     */
    Optional<String> first(int bar, Stretch stretch, Wording words) {
        return moves.getOrDefault(bar, List.of()).stream()
                .filter(move -> move.first() || stretch.contains(move.at()) && isFirst(bar, stretch, move))
                .findFirst()
                .map(move -> said(move, words));
    }

    /** Where it goes for a later stretch, as it is said when what comes before was played. */
    Optional<String> next(int bar, Stretch stretch, Wording words) {
        return in(bar, stretch)
                .filter(move -> !move.first() && isFirst(bar, stretch, move))
                .findFirst()
                .map(move -> words.say("hand.shift.then", String.valueOf(move.fret())));
    }

    /**
     * When it moves in the stretch, after that.
     *
     * @param held whether something sounds on where the stretch begins, so that the hand cannot move before it
     */
    List<Fraction> later(int bar, Stretch stretch, boolean held) {
        return in(bar, stretch)
                .filter(move -> !move.first() && (held || !isFirst(bar, stretch, move)))
                .map(Move::at)
                .toList();
    }

    private Stream<Move> in(int bar, Stretch stretch) {
        return moves.getOrDefault(bar, List.of()).stream().filter(move -> stretch.contains(move.at()));
    }

    private boolean isFirst(int bar, Stretch stretch, Move move) {
        return lying.get(bar).subMap(stretch.from(), move.at()).isEmpty();
    }

    /** In a sentence where it goes for a bar that is told by an earlier one. */
    List<String> sentences(int bar, Wording words) {
        return moves.getOrDefault(bar, List.of()).stream()
                .map(move -> said(move, words))
                .toList();
    }

    /** What is told of bars by earlier ones, after where the hand goes for them. */
    String before(int bar, String told, Wording words) {
        return moves.getOrDefault(bar, List.of()).stream()
                .findFirst()
                .map(move -> words.say("hand.shift.same", String.valueOf(move.fret()), told))
                .orElse(told);
    }

    private static String said(Move move, Wording words) {
        return words.say(move.first() ? "hand.first" : "hand.shift", String.valueOf(move.fret()));
    }

    /** The fret of the index finger at a time of a bar. */
    int fret(int bar, Fraction at) {
        return lying.get(bar).get(at);
    }

    /** In a sentence where it goes from the end of one bar to the beginning of another that follows it, if it moves. */
    Optional<String> back(int from, int to, Wording words) {
        boolean known = from < lying.size()
                && !lying.get(from).isEmpty()
                && !lying.get(to).isEmpty();
        if (!known) {
            return Optional.empty();
        }
        int before = lying.get(from).lastEntry().getValue();
        int after = lying.get(to).firstEntry().getValue();
        return before == after || before == HandPath.NOWHERE || after == HandPath.NOWHERE
                ? Optional.empty()
                : Optional.of(words.say("hand.back", String.valueOf(after)));
    }

    boolean isMoved(int bar, Fraction from, Fraction to) {
        return moves.getOrDefault(bar, List.of()).stream()
                .anyMatch(move -> !move.at().isBefore(from) && move.at().isBefore(to));
    }
}
