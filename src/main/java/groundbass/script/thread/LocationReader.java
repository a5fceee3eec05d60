package groundbass.script.thread;

import groundbass.script.checking.Right;
import groundbass.script.checking.Timeline.At;
import groundbass.script.grammar.Constituent;
import groundbass.script.grammar.Constituent.Rank;
import groundbass.script.grammar.Constituent.Tie;
import groundbass.script.thread.stage.Item;
import groundbass.script.thread.stage.Items;
import groundbass.script.thread.stage.Judged;
import groundbass.script.thread.stage.Part;
import groundbass.script.thread.stage.PlacedClause;
import groundbass.script.thread.stage.Scope;
import groundbass.script.thread.stage.Stage;
import groundbass.script.thread.stage.Wrongs;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;

/** Where something stands: "the slide is in bar two", "only bar three has a triplet", "the dead note falls on four". */
final class LocationReader implements Reader {
    private static final Set<Tie> IDLE = Set.of(
            Tie.BE, Tie.HAVE, Tie.PLAY, Tie.FALL, Tie.ONLY, Tie.SO, Tie.AND, Tie.COMMA, Tie.STOP, Tie.WITH, Tie.BAR,
            Tie.NOTE, Tie.THAT, Tie.IN, Tie.AT, Tie.IT, Tie.THERE, Tie.WE, Tie.BUT);

    private final Stage stage;

    LocationReader(Stage stage) {
        this.stage = stage;
    }

    @Override
    public Optional<Judged> read(PlacedClause said) {
        boolean only = isOnly(said.units()) && !said.has(Constituent.Count.class);
        boolean placed = said.scope().extent() == Scope.Extent.SAID
                || said.scope().time().isPresent();
        if (!placed || (!only && !isSubjectFirst(said) && !isRanked(said))) {
            return Optional.empty();
        }
        var rest = new ArrayList<Constituent>();
        for (var unit : said.units()) {
            if (!(unit instanceof Constituent.Small small && IDLE.contains(small.tie()))) {
                rest.add(unit);
            }
        }
        var rank = said.only(Rank.class);
        if (rank.isPresent()) {
            return only ? Optional.empty() : ranked(rank.get(), rest, said);
        }
        return Items.of(rest, stage)
                .filter(row -> row.items().size() == 1)
                .flatMap(row -> located(row.items().get(0), only, said));
    }

    /** "Danach folgt auf der Zwei das nächste D": which of several it is, says that it is the only thing spoken of. */
    private static boolean isRanked(PlacedClause said) {
        long content = said.units().stream()
                .filter(unit -> !(unit instanceof Constituent.Small))
                .count();
        boolean next = said.only(Rank.class)
                .filter(rank -> rank.which() == Rank.Which.NEXT || rank.which() == Rank.Which.LAST)
                .isPresent();
        return next
                && said.scope().time().isPresent()
                && said.has(Tie.PLAY)
                && (content == 2 || content == 1 && said.has(Tie.NOTE))
                && !said.hasAny(
                        Tie.NOT, Tie.NO, Tie.MAYBE, Tie.OTHER, Tie.BEFORE, Tie.TO, Tie.FROM, Tie.SAME, Tie.HOLD);
    }

    /** "The second D comes on three": of those in its bar. */
    private Optional<Judged> ranked(Rank rank, List<Constituent> rest, PlacedClause said) {
        boolean one = said.bars().size() == 1
                && stage.timeline().has(said.bars().get(0))
                && said.scope().time().isPresent()
                && (rank.which() == Rank.Which.NTH
                        || rank.which() == Rank.Which.LAST
                        || rank.which() == Rank.Which.NEXT
                                && !said.memory().notes().isEmpty());
        var what = rest.stream()
                .filter(unit -> unit != rank && !PlacedClause.is(unit, Tie.AFTER))
                .toList();
        if (what.isEmpty() && one && said.has(Tie.NOTE) && rank.which() == Rank.Which.LAST) {
            return Optional.of(last(said));
        }
        return Optional.of(what)
                .filter(units -> one && !units.isEmpty())
                .flatMap(units -> Items.of(units, stage))
                .map(Items.Row::items)
                .filter(items -> items.size() == 1 && !items.get(0).rest())
                .flatMap(items -> nth(rank, items.get(0), said));
    }

    /** "You play the last note on four": that of the bar in hand, or of the line. */
    private Judged last(PlacedClause said) {
        var ofBar = stage.notes(said.bars().get(0));
        var all = stage.everyNote();
        var meant = said.scope().isSaid()
                ? List.of(ofBar.get(ofBar.size() - 1))
                : List.of(ofBar.get(ofBar.size() - 1), all.get(all.size() - 1));
        boolean some = meant.stream().anyMatch(at -> begins(List.of(at), said.in(at.bar())));
        var note = meant.get(0);
        return some ? Judged.mixed(List.of(note)) : Judged.wrong(Wrongs.note(note, Item.NOTHING, stage), List.of(note));
    }

    private Optional<Judged> nth(Rank rank, Item item, PlacedClause said) {
        var all = stage.notes(said.bars().get(0)).stream().filter(item::fits).toList();
        if (all.size() < 2) {
            return Optional.empty();
        }
        var which =
                switch (rank.which()) {
                    case NTH -> all.stream().skip(rank.nth() - 1L).findFirst();
                    case LAST -> Optional.of(all.get(all.size() - 1));
                    case NEXT -> next(all, said.memory().notes());
                    case MIDDLE, HIGHEST, LOWEST -> Optional.<At>empty();
                };
        return which.map(at -> placed(at, item, said));
    }

    /** The first that comes after the notes that were spoken of. */
    private static Optional<At> next(List<At> all, List<At> before) {
        var last = before.get(before.size() - 1);
        return all.stream()
                .filter(at -> at.bar() == last.bar()
                        && at.note().onset().isAfter(last.note().onset()))
                .findFirst();
    }

    private Judged placed(At at, Item item, PlacedClause said) {
        var meant = List.of(at);
        return Judged.of(begins(meant, said), Wrongs.note(at, item, stage), meant);
    }

    /** "Only bar three has ...", "bar four is the only bar with ..."; "is only the G" says no more than "is the G". */
    private static boolean isOnly(List<Constituent> units) {
        for (int i = 0; i < units.size(); i++) {
            if (PlacedClause.is(units.get(i), Tie.ONLY)) {
                return i == 0 || i + 1 < units.size() && PlacedClause.is(units.get(i + 1), Tie.BAR);
            }
            boolean verb = PlacedClause.is(units.get(i), Tie.HAVE) || !(units.get(i) instanceof Constituent.Small);
            if (verb) {
                return false;
            }
        }
        return false;
    }

    /** A thing, then a verb, then nothing but the place. */
    private static boolean isSubjectFirst(PlacedClause said) {
        var units = said.units();
        int verb = -1;
        boolean thing = false;
        for (int i = 0; i < units.size(); i++) {
            boolean isVerb = PlacedClause.is(units.get(i), Tie.BE)
                    || PlacedClause.is(units.get(i), Tie.PLAY)
                    || PlacedClause.is(units.get(i), Tie.FALL)
                    || PlacedClause.is(units.get(i), Tie.HAVE);
            verb = isVerb && verb < 0 ? i : verb;
            boolean content = !(units.get(i) instanceof Constituent.Small);
            if (content && verb >= 0) {
                return false;
            }
            thing |= content;
        }
        return thing && verb > 0;
    }

    private Optional<Judged> located(Item item, boolean only, PlacedClause said) {
        boolean inHand =
                said.scope().time().isPresent() && !said.memory().bars().isEmpty();
        var bars = said.scope().isSaid()
                ? said.scope().bars()
                : inHand ? said.memory().bars() : stage.allBars();
        var stretches = stage.stretches(bars, said.scope().time(), said.memory().beat());
        if (stretches.isEmpty()) {
            return Optional.empty();
        }
        if (item.rest()) {
            return said.scope().time().isPresent() && said.scope().isSaid()
                    ? Optional.of(rest(item, said))
                    : Optional.empty();
        }
        var everywhere = stage.everyNote().stream().filter(item::fits).toList();
        var here = stage.notes(stretches).stream().filter(item::fits).toList();
        var at = everywhere.stream().map(At::bar).distinct().toList();
        if (everywhere.isEmpty()) {
            return Optional.of(Judged.wrong(new Right.OnlyIn(List.of()), List.of()));
        }
        if (!here.isEmpty()) {
            boolean alone = here.size() == everywhere.size();
            boolean inTime = said.scope().time().isEmpty() || begins(here, said);
            if (!inTime) {
                return Optional.of(Judged.wrong(Wrongs.note(here.get(0), item, stage), here));
            }
            return Optional.of(Judged.of(alone || !only, new Right.OnlyIn(at), here));
        }
        boolean elsewhere = inHand && !said.scope().isSaid();
        if (elsewhere) { // "the C comes in on three": the one of the bar in hand, if it has one
            return stage.notes(stage.stretches(bars, Optional.empty(), OptionalInt.empty())).stream()
                    .filter(item::fits)
                    .findFirst()
                    .map(one -> Judged.wrong(Wrongs.note(one, item, stage), List.of(one)))
                    .or(() -> Optional.of(Judged.open(List.of())));
        }
        boolean one = !said.scope().isSaid()
                && everywhere.stream().map(At::bar).distinct().count() > 1
                && !item.has(Part.Kind.TUPLET);
        return Optional.of(
                one
                        ? Judged.open(List.of())
                        : Judged.wrong(
                                said.scope().time().isPresent()
                                        ? Wrongs.note(everywhere.get(0), item, stage)
                                        : new Right.OnlyIn(at),
                                everywhere));
    }

    private boolean begins(List<At> here, PlacedClause said) {
        return here.stream()
                .anyMatch(at -> stage
                        .stretches(
                                List.of(at.bar()),
                                said.scope().time(),
                                said.memory().beat())
                        .stream()
                        .anyMatch(stretch -> stretch.from().equals(at.note().onset())));
    }

    private Judged rest(Item item, PlacedClause said) {
        var stretches = stage.stretches(
                said.scope().bars(), said.scope().time(), said.memory().beat());
        var events = stage.events(stretches);
        boolean begins = !events.isEmpty()
                && events.get(0).isRest()
                && events.get(0).from().equals(stretches.get(0).from());
        return Judged.of(begins, Wrongs.start(stretches.get(0), item, stage), stage.notes(stretches));
    }
}
