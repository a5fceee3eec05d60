package groundbass.script.thread.whole;

import groundbass.script.grammar.Clause;
import groundbass.script.grammar.Constituent;
import groundbass.script.grammar.Constituent.Tie;
import groundbass.script.grammar.Read;
import groundbass.script.thread.stage.Memory;
import groundbass.script.thread.stage.Stage;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.stream.Stream;

/**
 * To which bars and which beat a clause turns.
 *
 * @param overview whether it was just said of how many bars the line is
 * @param counted whether it was just asked how many there are of something, so that a number is no bar's
 */
public record Turn(Memory memory, Stage stage, boolean overview, boolean counted) {
    /** @param bars empty where the clause turns to none */
    public record To(Optional<List<Integer>> bars, OptionalInt beat) {}

    public To of(Clause clause) {
        List<Integer> bars = null;
        boolean inPassing = false;
        boolean said = false;
        boolean compared = false; // "the same as bar one" turns to no other bar
        boolean pointing = false; // nor does "as it was back in bar one"
        var beat = OptionalInt.empty();
        int places = 0;
        for (Read read : clause.units()) {
            var unit = read.unit();
            compared |= read.is(Tie.SAME) || read.is(Tie.LIKE) || read.is(Tie.EXCEPT) || isAsBefore(clause, read);
            pointing |= isSubject(clause, read);
            if (unit instanceof Constituent.Bars named
                    && (compared && !isOpening(clause, read) || pointing && isBehind(named.numbers()))
                    && !memory.bars().isEmpty()) {
                places++;
            } else if (unit instanceof Constituent.Bars named) {
                inPassing |= places == 0 && (said || isOf(clause, read));
                bars = places == 0 ? named.numbers() : bars;
                places++;
            } else if (unit instanceof Constituent.BarAt at) {
                bars = standing(at, bars);
            } else if (unit instanceof Constituent.Beats beats
                    && beats.numbers().size() == 1) {
                beat = OptionalInt.of(beats.numbers().get(0));
            } else if (unit instanceof Constituent.Parts parts && parts.beat().isPresent()) {
                beat = parts.beat();
            } else {
                said |= !(unit instanceof Constituent.Small) && !(unit instanceof Constituent.Unknown) || isNoun(read);
            }
        }
        bars = bars == null ? number(clause).filter(named -> !counted).orElse(null) : either(bars, inPassing);
        return new To(Optional.ofNullable(bars), beat);
    }

    /** @param before the bars turned to so far; null where there are none */
    private List<Integer> standing(Constituent.BarAt at, List<Integer> before) {
        int last = stage.timeline().lastBar();
        return switch (at.way()) {
            case FIRST -> List.of(stage.timeline().line().firstNumber());
            case PENULTIMATE -> List.of(last - 1);
            case LAST -> overview ? before : List.of(last);
            case NEXT -> memory.bar().map(bar -> List.of(bar + 1)).orElse(before);
            case THIS, EACH -> before;
        };
    }

    /** "Four, the chord goes to C": a number by itself may be a bar's; the next one it is, where one then speaks of it. */
    private Optional<List<Integer>> number(Clause clause) {
        var units = clause.units();
        boolean led = units.size() > 1 && units.get(1).is(Tie.WE);
        boolean next = led
                && units.get(0).unit() instanceof Constituent.Number number
                && memory.bars().contains(number.value() - 1)
                && stage.timeline().has(number.value());
        if (next) {
            return Optional.of(List.of(((Constituent.Number) units.get(0).unit()).value()));
        }
        for (int i = 0; i + 1 < units.size(); i++) {
            boolean first = units.subList(0, i).stream().allMatch(read -> read.is(Tie.COMMA) || read.is(Tie.SO));
            boolean apart = (i == 0 || units.get(i - 1).is(Tie.COMMA))
                    && units.get(i + 1).is(Tie.COMMA);
            boolean here = apart
                    && units.get(i).unit() instanceof Constituent.Number said
                    && (first && units.size() > i + 3 || memory.bars().contains(said.value() - 1));
            if (here && units.get(i).unit() instanceof Constituent.Number number) {
                return Optional.of(number.value()).filter(stage.timeline()::has).map(bar -> both(List.of(bar)));
            }
        }
        return Optional.empty();
    }

    /** "It was", "those we had", and not "this line". */
    private static boolean isSubject(Clause clause, Read read) {
        int next = clause.units().indexOf(read) + 1;
        boolean bare = clause.has(Tie.WE)
                && read.is(Tie.HAVE)
                && clause.units().stream()
                        .allMatch(
                                other -> other.unit() instanceof Constituent.Small || other.is(Constituent.Bars.class));
        if (bare) { // "den hatten wir in Takt eins"
            return true;
        }
        boolean verb = next < clause.units().size()
                && (clause.units().get(next).is(Tie.BE)
                        || clause.units().get(next).is(Tie.HAVE));
        return verb && (read.is(Tie.IT) || read.is(Tie.THAT) || read.is(Tie.THEY));
    }

    /** "... like it, bar six starts ...": the next bar, with a verb of its own. */
    private boolean isOpening(Clause clause, Read bars) {
        int next = clause.units().indexOf(bars) + 1;
        boolean verb = next < clause.units().size()
                && (clause.units().get(next).is(Tie.START)
                        || clause.units().get(next).is(Tie.HAVE)
                        || clause.units().get(next).is(Tie.PLAY));
        var numbers = ((Constituent.Bars) bars.unit()).numbers();
        return verb
                && memory.bar().filter(bar -> numbers.equals(List.of(bar + 1))).isPresent();
    }

    /** "Of bar one": something that is there. */
    private static boolean isOf(Clause clause, Read bars) {
        int at = clause.units().indexOf(bars);
        return at > 0 && clause.units().get(at - 1).is(Tie.OF);
    }

    /** "... what you played in bar two": as it was there. */
    private static boolean isAsBefore(Clause clause, Read read) {
        int next = clause.units().indexOf(read) + 1;
        return read.is(Tie.WHAT)
                && next < clause.units().size()
                && clause.units().get(next).is(Tie.WE);
    }

    /** "The chord is that of bar one". */
    private static boolean isNoun(Read read) {
        return read.is(Tie.CHORD) || read.is(Tie.NOTE) || read.is(Tie.RHYTHM) || read.is(Tie.STRING);
    }

    private boolean isBehind(List<Integer> bars) {
        int last = memory.bars().stream().mapToInt(bar -> bar).max().orElse(0);
        return bars.stream().allMatch(bar -> bar < last);
    }

    /** A bar that is named in passing, and lies behind, may be turned to or only be mentioned. */
    private List<Integer> either(List<Integer> bars, boolean inPassing) {
        return inPassing && isBehind(bars) ? both(bars) : bars;
    }

    private List<Integer> both(List<Integer> bars) {
        return Stream.concat(bars.stream(), memory.bars().stream())
                .distinct()
                .sorted()
                .toList();
    }
}
