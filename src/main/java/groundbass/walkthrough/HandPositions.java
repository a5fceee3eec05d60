package groundbass.walkthrough;

import groundbass.score.Arrival;
import groundbass.score.Fraction;
import groundbass.score.Line;
import groundbass.score.Meter;
import groundbass.score.Position;
import groundbass.walkthrough.Earlier.Moved;
import groundbass.walkthrough.words.Wording;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.NavigableMap;
import java.util.Optional;
import java.util.TreeMap;

/**
 * Where the index finger lies, told before the first note that is stopped from there: at the beginning of the line, and
 * where the hand moves. Bars and beats that are told by earlier ones have the places of the earlier ones, moved with the
 * shape. A slide takes the hand along without a word.
 */
final class HandPositions {
    /** What is told without it. */
    static final HandPositions NONE = new HandPositions();

    /** For each bar where the index finger lies at each moment at which something is stopped. */
    private final List<TreeMap<Fraction, Integer>> lying;

    private final Map<Integer, List<Move>> moves = new HashMap<>();
    private int told = HandPath.NOWHERE;
    private boolean begun;

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
        for (int i = 0; i < line.bars().size(); i++) {
            tell(line, i, earlier.of(i));
        }
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
            boolean said = !isSlidTo(line, index, entry.getKey()) && (earlier.isEmpty() || fresh);
            if (comes && said) {
                var at = entry.getKey();
                boolean again = earlier.filter(on -> isSaid(on.number() - line.firstNumber(), at))
                        .isPresent();
                moves.computeIfAbsent(index, i -> new ArrayList<>()).add(new Move(at, fret, !begun, again));
                begun = true;
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

    /** What is said in the heading of a stretch of the bar of this index, with a count where something was stopped before. */
    List<String> in(int bar, Fraction from, Fraction to, Meter meter, Wording words) {
        return moves.getOrDefault(bar, List.of()).stream()
                .filter(move -> !move.at().isBefore(from) && move.at().isBefore(to))
                .map(move -> said(move, lying.get(bar).subMap(from, move.at()).isEmpty(), meter, words))
                .toList();
    }

    boolean isMoved(int bar, Fraction from, Fraction to) {
        return moves.getOrDefault(bar, List.of()).stream()
                .anyMatch(move -> !move.at().isBefore(from) && move.at().isBefore(to));
    }

    private static String said(Move move, boolean plain, Meter meter, Wording words) {
        String fret = String.valueOf(move.fret());
        if (move.first()) {
            return words.say("hand.first", fret);
        }
        return words.count(move.at(), meter)
                .filter(count -> !plain)
                .map(count -> words.say("hand.shift.on", fret, count))
                .orElseGet(() -> words.say("hand.shift", fret));
    }
}
