package groundbass.walkthrough;

import groundbass.score.Arrival;
import groundbass.score.Fraction;
import groundbass.score.Line;
import groundbass.score.Meter;
import groundbass.score.Note;
import groundbass.score.Place.Fretted;
import groundbass.score.Position;
import groundbass.walkthrough.Earlier.Moved;
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

    /** In a sentence where it goes for the first note that is stopped in a stretch of the bar of this index. */
    Optional<String> first(int bar, Stretch stretch, Wording words) {
        return in(bar, stretch)
                .filter(move -> isFirst(bar, stretch, move))
                .findFirst()
                .map(move -> words.say(move.first() ? "hand.first" : "hand.shift", String.valueOf(move.fret())));
    }

    /** Where it goes after that, as parts of a heading, with a count where there is one. */
    List<String> later(int bar, Stretch stretch, Meter meter, Wording words) {
        return in(bar, stretch)
                .filter(move -> !isFirst(bar, stretch, move))
                .map(move -> inHeading(move, words.count(move.at(), meter), words))
                .toList();
    }

    /** Where it goes in a stretch of the bar of this index, as parts of a heading. */
    List<String> inHeading(int bar, Stretch stretch, Meter meter, Wording words) {
        return in(bar, stretch)
                .map(move -> inHeading(
                        move, words.count(move.at(), meter).filter(count -> !isFirst(bar, stretch, move)), words))
                .toList();
    }

    private Stream<Move> in(int bar, Stretch stretch) {
        return moves.getOrDefault(bar, List.of()).stream().filter(move -> stretch.contains(move.at()));
    }

    private boolean isFirst(int bar, Stretch stretch, Move move) {
        return lying.get(bar).subMap(stretch.from(), move.at()).isEmpty();
    }

    private static String inHeading(Move move, Optional<String> count, Wording words) {
        String fret = String.valueOf(move.fret());
        if (move.first()) {
            return words.say("hand.first.with", fret);
        }
        return count.map(at -> words.say("hand.shift.on.with", fret, at))
                .orElseGet(() -> words.say("hand.shift.with", fret));
    }

    /** Where it goes for a bar that is told by an earlier one, as parts of its heading. */
    List<String> inHeading(int bar, Wording words) {
        return moves.getOrDefault(bar, List.of()).stream()
                .map(move -> words.say("hand.shift.with", String.valueOf(move.fret())))
                .toList();
    }

    boolean isMoved(int bar, Fraction from, Fraction to) {
        return moves.getOrDefault(bar, List.of()).stream()
                .anyMatch(move -> !move.at().isBefore(from) && move.at().isBefore(to));
    }
}
