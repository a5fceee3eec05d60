package groundbass.script.thread.stage;

import groundbass.script.checking.Timeline.At;
import groundbass.script.grammar.Constituent;
import groundbass.script.grammar.Constituent.Rank;
import groundbass.script.grammar.Constituent.Tie;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * What a clause speaks of, before its verb.
 *
 * @param notes the notes that may be meant
 * @param together whether all of them are meant, or one of them, nobody knows which
 */
public record Subject(List<At> notes, boolean together) {
    /** Empty where the words before the verb name nothing that is known; see {@link #isNone} for a mere "there". */
    public static Optional<Subject> of(List<Constituent> left, PlacedClause said, Stage stage) {
        boolean plural = left.stream()
                .anyMatch(unit -> PlacedClause.is(unit, Tie.THEY)
                        || PlacedClause.is(unit, Tie.BOTH)
                        || PlacedClause.is(unit, Tie.ALL)
                        || unit instanceof Constituent.Count count && count.many() > 1);
        var beside = beside(left, said, stage);
        if (beside.isPresent()) {
            return beside;
        }
        var ranks = ranks(left, said);
        var numbers = new ArrayList<Integer>();
        var rest = new ArrayList<Constituent>();
        for (var unit : left) {
            if (unit instanceof Constituent.Number number) {
                numbers.add(number.value());
            } else if (unit instanceof Constituent.Count count && plural) {
                numbers.add(count.many());
            } else if (!(unit instanceof Rank) && !isPointing(unit)) {
                rest.add(unit);
            }
        }
        if (ranks.size() > 1 || numbers.size() > 1) {
            return Optional.empty();
        }
        var amount = numbers.isEmpty() ? OptionalInt.empty() : OptionalInt.of(numbers.get(0));
        boolean octave = rest.stream().anyMatch(Constituent.Octaves.class::isInstance) && rest.size() > 1;
        if (octave) {
            return Optional.empty();
        }
        boolean plain =
                rest.stream().allMatch(unit -> PlacedClause.is(unit, Tie.NOTE) || PlacedClause.is(unit, Tie.ONE));
        boolean everything = plain
                && left.stream().anyMatch(unit -> PlacedClause.is(unit, Tie.ALL) || PlacedClause.is(unit, Tie.EACH))
                && left.stream().anyMatch(unit -> PlacedClause.is(unit, Tie.NOTE))
                && numbers.isEmpty()
                && ranks.isEmpty();
        if (everything && said.scope().time().isEmpty()) {
            var bars = said.scope().isSaid() ? said.scope().bars() : stage.allBars();
            return Optional.of(new Subject(
                    stage.notes(stage.stretches(bars, Optional.empty(), OptionalInt.empty())),
                    said.scope().isSaid()));
        }
        if (plain) {
            return pointed(said.memory().notes(), ranks, amount, plural, said);
        }
        return Items.of(rest, stage)
                .filter(row -> row.items().size() == 1 && !row.items().get(0).rest())
                .flatMap(row -> described(row.items().get(0), ranks, plural, amount, said, stage));
    }

    /** "The pop before it", "the B after that": the nearest that is so, on that side of what was spoken of. */
    private static Optional<Subject> beside(List<Constituent> left, PlacedClause said, Stage stage) {
        int side = 0;
        while (side < left.size()
                && !PlacedClause.is(left.get(side), Tie.BEFORE)
                && !PlacedClause.is(left.get(side), Tie.AFTER)) {
            side++;
        }
        boolean pointed = side > 0
                && side + 1 < left.size()
                && left.subList(side + 1, left.size()).stream()
                        .allMatch(unit -> PlacedClause.is(unit, Tie.THAT)
                                || PlacedClause.is(unit, Tie.IT)
                                || PlacedClause.is(unit, Tie.COMMA));
        var notes = said.memory().notes();
        if (!pointed || notes.isEmpty() || !said.memory().sure()) {
            return Optional.empty();
        }
        boolean before = PlacedClause.is(left.get(side), Tie.BEFORE);
        var what = left.subList(0, side).stream()
                .filter(unit -> !isPointing(unit) && !PlacedClause.is(unit, Tie.ONLY))
                .toList();
        boolean any = what.stream().allMatch(unit -> PlacedClause.is(unit, Tie.NOTE) || PlacedClause.is(unit, Tie.ONE));
        var item = any
                ? Optional.of(Item.NOTHING)
                : Items.of(what, stage)
                        .map(Items.Row::items)
                        .filter(items -> items.size() == 1)
                        .map(items -> items.get(0));
        var all = stage.everyNote();
        int at = all.indexOf(before ? notes.get(0) : notes.get(notes.size() - 1));
        if (at < 0) {
            return Optional.empty();
        }
        var near = before ? all.subList(0, at) : all.subList(at + 1, all.size());
        return item.filter(there -> !there.rest())
                .map(there -> matching(near, there))
                .filter(found -> !found.isEmpty())
                .map(found -> new Subject(List.of(found.get(before ? found.size() - 1 : 0)), true));
    }

    /** "The D at the end" is the last; "the next E, on two" is the one on two. */
    private static List<Rank> ranks(List<Constituent> left, PlacedClause said) {
        boolean timed = said.scope().time().isPresent();
        var ranks = left.stream()
                .filter(Rank.class::isInstance)
                .map(Rank.class::cast)
                .filter(rank -> !timed || rank.which() != Rank.Which.NEXT)
                .toList();
        boolean start = left.stream().anyMatch(unit -> PlacedClause.is(unit, Tie.START)); // "this opening B"
        if (ranks.isEmpty() && start) {
            return List.of(new Rank(Rank.Which.NTH, 1));
        }
        boolean end = left.stream().anyMatch(unit -> PlacedClause.is(unit, Tie.END));
        return ranks.isEmpty() && end ? List.of(new Rank(Rank.Which.LAST, 1)) : ranks;
    }

    private static boolean isPointing(Constituent unit) {
        return unit instanceof Constituent.Small small
                && switch (small.tie()) {
                    case IT,
                            THAT,
                            THEY,
                            BOTH,
                            ALL,
                            EACH,
                            WHICH,
                            OF,
                            SO,
                            AND,
                            COMMA,
                            BUT,
                            THEN,
                            STOP,
                            WE,
                            AFTER,
                            AT,
                            START,
                            END,
                            HIGH,
                            LOW,
                            AGAIN -> true;
                    default -> false;
                };
    }

    /** Whether nothing is named before the verb. */
    public static boolean isNone(List<Constituent> left) {
        return left.stream()
                .allMatch(unit -> unit instanceof Constituent.Small small
                        && switch (small.tie()) {
                            case WE, THERE, SO, AND, COMMA, BUT, THEN, STOP, COLON, ON, AT, IN, AFTER, AGAIN, SLOW ->
                                true;
                            default -> false;
                        });
    }

    private static Optional<Subject> pointed(
            List<At> notes, List<Rank> ranks, OptionalInt amount, boolean plural, PlacedClause said) {
        boolean elsewhere = said.scope().isSaid() || said.scope().time().isPresent();
        boolean counted = amount.isPresent() && amount.getAsInt() != notes.size();
        if (notes.isEmpty() || elsewhere || counted || plural && ranks.isEmpty() && notes.size() < 2) {
            return Optional.empty();
        }
        if (ranks.isEmpty()) {
            return Optional.of(new Subject(notes, plural || amount.isPresent()));
        }
        return notes.size() < 2 ? Optional.empty() : ranked(notes, ranks.get(0));
    }

    private static Optional<Subject> ranked(List<At> notes, Rank rank) {
        int last = notes.size() - 1;
        int index =
                switch (rank.which()) {
                    case NTH -> rank.nth() - 1;
                    case LAST -> last;
                    case MIDDLE -> last % 2 == 0 ? last / 2 : -1;
                    case NEXT, HIGHEST, LOWEST -> -1;
                };
        return index < 0 || index > last ? Optional.empty() : Optional.of(new Subject(List.of(notes.get(index)), true));
    }

    /** The notes that are as described: among those spoken of last, else where the clause says, else in the bar in hand. */
    private static Optional<Subject> described(
            Item item, List<Rank> ranks, boolean plural, OptionalInt amount, PlacedClause said, Stage stage) {
        var memory = said.memory();
        boolean placed = said.scope().isSaid() || said.scope().time().isPresent();
        var stretches = stage.stretches(said.bars(), said.scope().time(), memory.beat());
        var near = placed ? List.<At>of() : matching(memory.notes(), item);
        var here = near.isEmpty() ? matching(stage.notes(stretches), item) : near;
        var all = here.isEmpty() && !placed ? matching(stage.everyNote(), item) : here;
        if (all.isEmpty() || amount.isPresent() && amount.getAsInt() != all.size()) {
            return Optional.empty();
        }
        return ranks.isEmpty() ? Optional.of(new Subject(all, plural)) : ranked(all, ranks.get(0));
    }

    private static List<At> matching(List<At> notes, Item item) {
        return notes.stream().filter(item::fits).toList();
    }
}
