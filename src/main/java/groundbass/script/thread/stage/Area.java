package groundbass.script.thread.stage;

import groundbass.script.checking.Timeline.At;
import groundbass.script.checking.Timeline.Stretch;
import groundbass.script.grammar.Constituent;
import groundbass.script.grammar.Constituent.Rank;
import groundbass.script.grammar.Constituent.Tie;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.TreeSet;

/**
 * All of the line that a clause may be speaking of.
 *
 * @param notes those that begin there, and those that still sound where it begins
 * @param events what happens there in a row
 */
public record Area(List<Stretch> stretches, List<At> notes, List<Together> events) {
    /** Empty where nobody can say. */
    public static Optional<Area> of(PlacedClause said, Stage stage) {
        var bars = bars(said, stage);
        var time = said.scope().time();
        boolean adrift = bars.isEmpty() && (time.isPresent() || !said.has(Constituent.Times.class));
        if (adrift || bars.stream().anyMatch(bar -> !stage.timeline().has(bar))) {
            return Optional.empty();
        }
        var where = bars.isEmpty() ? stage.allBars() : bars;
        var stretches = stage.stretches(where, time, said.memory().beat());
        if (stretches.isEmpty()) {
            return Optional.empty();
        }
        var notes = new ArrayList<>(time.isPresent() ? sounding(stretches, stage) : List.of());
        notes.addAll(stage.notes(stretches));
        return Optional.of(new Area(stretches, List.copyOf(notes), stage.events(stretches)));
    }

    /** The bars that were said; else the one in hand, with those that may be meant as well. */
    private static List<Integer> bars(PlacedClause said, Stage stage) {
        if (said.scope().isSaid()) {
            return said.scope().bars();
        }
        var bars = new TreeSet<>(said.memory().bars());
        if (bars.isEmpty() || said.has(Constituent.Times.class)) {
            return List.of();
        }
        boolean timed = said.scope().time().isPresent();
        if (!timed) {
            said.memory().notes().forEach(at -> bars.add(at.bar()));
            if (!said.has(Tie.THEY)) {
                said.all(Rank.class).forEach(rank -> edge(rank, stage).ifPresent(bars::add));
            }
        }
        boolean end = !timed && said.has(Tie.END) && said.has(Tie.AT); // "at the very end"
        if (end) {
            bars.add(stage.timeline().lastBar());
        }
        boolean onward = !timed && said.hasAny(Tie.THEN, Tie.AFTER, Tie.START);
        if (onward && stage.timeline().has(bars.last() + 1)) {
            bars.add(bars.last() + 1);
        }
        return List.copyOf(bars);
    }

    /** "The first note" and "the last" may be those of the line. */
    private static OptionalInt edge(Rank rank, Stage stage) {
        if (rank.which() == Rank.Which.LAST) {
            return OptionalInt.of(stage.timeline().lastBar());
        }
        boolean first = rank.which() == Rank.Which.NTH && rank.nth() == 1;
        return first ? OptionalInt.of(stage.timeline().line().firstNumber()) : OptionalInt.empty();
    }

    private static List<At> sounding(List<Stretch> stretches, Stage stage) {
        return stretches.stream()
                .flatMap(stretch -> stage.notes(stretch.bar()).stream()
                        .filter(at -> at.note().onset().isBefore(stretch.from())
                                && at.note().end().isAfter(stretch.from())))
                .toList();
    }
}
