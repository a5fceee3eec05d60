package groundbass.score;

import groundbass.score.Passes.Fault;
import groundbass.score.Passes.Fault.Kind;
import groundbass.score.Repeats.Ending;
import groundbass.score.Repeats.RepeatEnd;
import java.util.ArrayList;
import java.util.List;
import java.util.OptionalInt;

/** One walk over the bars that cuts them into stretches and notes every sign that does not agree. */
final class Stretches {
    private final List<Bar> bars;
    private final List<Stretch> stretches = new ArrayList<>();
    private final List<Fault> faults = new ArrayList<>();

    private int first;
    private OptionalInt start = OptionalInt.empty();
    private OptionalInt openBracket = OptionalInt.empty();
    private final List<Bracket> brackets = new ArrayList<>();

    /** Bars {@code first} to {@code last}, played {@code passes} times, some of them only on their bracket's passes. */
    record Stretch(int first, int last, int passes, List<Bracket> brackets) {
        boolean isPlayed(int bar, int pass) {
            return brackets.stream()
                    .filter(bracket -> bar >= bracket.first() && bar <= bracket.last())
                    .allMatch(bracket -> bracket.ending().isPlayedOn(pass));
        }
    }

    /** The bars under one bracket. */
    record Bracket(int first, int last, Ending ending) {}

    Stretches(List<Bar> bars) {
        this.bars = bars;
        for (int i = 0; i < bars.size(); i++) {
            enter(i, bars.get(i).repeats());
            leave(i, bars.get(i).repeats());
        }
        finish();
    }

    List<Stretch> all() {
        return stretches;
    }

    List<Fault> faults() {
        return faults;
    }

    private void enter(int bar, Repeats signs) {
        if (signs.start()) {
            if (start.isPresent()) {
                fault(bar, Kind.START_INSIDE_STRETCH);
            }
            close(bar - 1, 1);
            start = OptionalInt.of(bar);
        }
        if (signs.ending().isPresent()) {
            if (openBracket.isPresent()) {
                fault(bar, Kind.ENDING_INSIDE_ENDING);
            }
            openBracket = OptionalInt.of(bar);
        }
    }

    private void leave(int bar, Repeats signs) {
        if (signs.endingEnd()) {
            closeBracket(bar, signs);
        } else if (signs.end().isPresent()) {
            if (openBracket.isPresent() || !brackets.isEmpty()) {
                fault(bar, Kind.REPEAT_END_MISPLACED);
            }
            close(bar, signs.end().flatMap(RepeatEnd::times).orElse(2));
        }
    }

    private void closeBracket(int bar, Repeats signs) {
        if (openBracket.isEmpty()) {
            fault(bar, Kind.END_WITHOUT_ENDING);
            return;
        }
        int begun = openBracket.getAsInt();
        openBracket = OptionalInt.empty();
        bars.get(begun).repeats().ending().ifPresent(ending -> brackets.add(new Bracket(begun, bar, ending)));
        boolean another =
                bar + 1 < bars.size() && bars.get(bar + 1).repeats().ending().isPresent();
        if (another != signs.end().isPresent()) {
            fault(bar, Kind.REPEAT_END_MISPLACED);
        }
        if (!another) {
            closeWithBrackets(bar);
        }
    }

    private void closeWithBrackets(int bar) {
        int expected = 1;
        for (var bracket : brackets) {
            if (bracket.ending().firstPass() != expected) {
                fault(bracket.first(), Kind.PASSES_NOT_COVERED);
            }
            expected = bracket.ending().lastPass() + 1;
        }
        int passes = expected - 1;
        for (var bracket : brackets) {
            boolean disagrees = bars.get(bracket.last())
                    .repeats()
                    .end()
                    .flatMap(RepeatEnd::times)
                    .filter(times -> times != passes)
                    .isPresent();
            if (disagrees) {
                fault(bracket.last(), Kind.TIMES_DISAGREE);
            }
        }
        close(bar, passes);
    }

    private void close(int last, int passes) {
        if (last >= first) {
            stretches.add(new Stretch(first, last, passes, List.copyOf(brackets)));
        }
        brackets.clear();
        start = OptionalInt.empty();
        first = last + 1;
    }

    private void finish() {
        if (openBracket.isPresent()) {
            fault(openBracket.getAsInt(), Kind.ENDING_NOT_CLOSED);
        } else if (start.isPresent()) {
            fault(start.getAsInt(), Kind.START_WITHOUT_END);
        }
        close(bars.size() - 1, 1);
    }

    private void fault(int bar, Kind kind) {
        faults.add(new Fault(bar, kind));
    }
}
