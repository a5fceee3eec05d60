package groundbass.script.thread;

import groundbass.script.checking.Timeline.At;
import groundbass.script.grammar.Constituent;
import groundbass.script.grammar.Constituent.Tie;
import groundbass.script.thread.stage.Items;
import groundbass.script.thread.stage.Judged;
import groundbass.script.thread.stage.PlacedClause;
import groundbass.script.thread.stage.Sides;
import groundbass.script.thread.stage.Stage;
import groundbass.script.thread.stage.Subject;
import groundbass.script.thread.stage.Together;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/** Notes and rests that come somewhere, one after another, and what notes that were spoken of are. */
final class NoteReader implements Reader {
    private final Stage stage;
    private final KnownNotes known;
    private final ComingNotes coming;

    NoteReader(Stage stage) {
        this.stage = stage;
        this.known = new KnownNotes(stage);
        this.coming = new ComingNotes(stage);
    }

    @Override
    public Optional<Judged> read(PlacedClause said) {
        boolean path = said.hasAny(Tie.TO, Tie.FROM) && said.has(Constituent.Played.class);
        if (path || isFromNote(said.units()) || Sides.hasTwoVerbs(said.units())) {
            return Optional.empty();
        }
        if (Sides.isFragment(said)) {
            return fragment(said);
        }
        return plain(said.with(Sides.withoutReference(said.units())));
    }

    /** "You come from the B": what a note comes from is another. */
    private static boolean isFromNote(List<Constituent> units) {
        for (int i = 0; i + 1 < units.size(); i++) {
            boolean note =
                    units.get(i + 1) instanceof Constituent.Name || units.get(i + 1) instanceof Constituent.Place;
            if (note && PlacedClause.is(units.get(i), Tie.FROM)) {
                return true;
            }
        }
        return false;
    }

    private Optional<Judged> plain(PlacedClause said) {
        int verb = Sides.verb(said.units());
        var left = verb < 0 ? List.<Constituent>of() : said.units().subList(0, verb);
        var right = Sides.right(said.units(), verb);
        boolean apart = verb > 1
                && PlacedClause.is(said.units().get(verb), Tie.PLAY)
                && PlacedClause.is(left.get(verb - 1), Tie.COMMA)
                && left.stream().anyMatch(unit -> !(unit instanceof Constituent.Small));
        if (apart) { // "two quavers: play an open D": not both of them are
            return Optional.empty();
        }
        boolean all = verb > 0
                && !right.isEmpty()
                && (PlacedClause.is(right.get(0), Tie.ALL) || PlacedClause.is(right.get(0), Tie.BOTH));
        if (all) { // "they're all slapped"
            left = Stream.concat(left.stream(), Stream.of(right.get(0))).toList();
            right = right.subList(1, right.size());
        }
        var each = all ? known.everyThere(left, right, said) : Optional.<Judged>empty();
        if (each.isPresent()) {
            return each;
        }
        var object = Sides.object(said.units(), verb, left);
        if (object.isPresent()) {
            return known.told(
                    List.of(object.get()),
                    right.stream().filter(unit -> unit != object.get()).toList(),
                    said);
        }
        var there = known.there(left, right, said);
        if (there.isPresent()) {
            return there;
        }
        if (Subject.isNone(left)) {
            return coming.presented(left, right, said);
        }
        var afterRest = afterRest(withoutIdle(left), right, said);
        if (afterRest.isPresent()) {
            return afterRest;
        }
        var anchor = anchor(left, said);
        if (anchor.isPresent()) {
            return after(anchor.get(), right, said);
        }
        boolean dummy = left.stream()
                .allMatch(unit -> Subject.isNone(List.of(unit))
                        || PlacedClause.is(unit, Tie.IT)
                        || PlacedClause.is(unit, Tie.THAT));
        if (!dummy && isFollowed(said.units(), verb)) {
            return Subject.of(left, said, stage)
                    .map(Subject::notes)
                    .filter(notes -> notes.size() == 1)
                    .flatMap(notes -> after(notes.get(0), Sides.right(said.units(), verb), said));
        }
        boolean placed = said.scope().time().isPresent();
        boolean follows = !right.isEmpty() && PlacedClause.is(right.get(0), Tie.THEN); // "it is followed by"
        return dummy && (placed || follows) ? coming.presented(left, right, said) : known.told(left, right, said);
    }

    /** "A quarter that is followed by two eighths": what comes behind the verb is another note. */
    private static boolean isFollowed(List<Constituent> units, int verb) {
        return verb >= 0
                && verb + 1 < units.size()
                && PlacedClause.is(units.get(verb), Tie.BE)
                && PlacedClause.is(units.get(verb + 1), Tie.THEN);
    }

    /** "After the D there are ...": the one note after which something comes. */
    private Optional<At> anchor(List<Constituent> left, PlacedClause said) {
        boolean after = !left.isEmpty()
                && PlacedClause.is(left.get(0), Tie.AFTER)
                && said.scope().time().isEmpty();
        var what = left.stream()
                .filter(unit -> !Subject.isNone(List.of(unit)) && !PlacedClause.is(unit, Tie.THAT))
                .toList();
        return after && !what.isEmpty()
                ? Subject.of(what, said, stage)
                        .map(Subject::notes)
                        .filter(notes ->
                                notes.size() == 1 || stage.tuplet(notes.get(0)).equals(notes)) // "after the triplet"
                        .map(notes -> notes.get(notes.size() - 1))
                : Optional.empty();
    }

    private static List<Constituent> withoutIdle(List<Constituent> left) {
        return left.stream()
                .filter(unit -> PlacedClause.is(unit, Tie.AFTER) || !Subject.isNone(List.of(unit)))
                .filter(unit -> !PlacedClause.is(unit, Tie.THAT))
                .toList();
    }

    private Optional<Judged> after(At anchor, List<Constituent> right, PlacedClause said) {
        var row = right.isEmpty() ? Optional.<Items.Row>empty() : Items.of(right, stage);
        var memory = said.memory().of(List.of(anchor), true);
        return row.flatMap(items -> coming.next(items.items(), said.after(memory)));
    }

    /** "After the rest there are ...": what comes after the only silence that may be meant. */
    private Optional<Judged> afterRest(List<Constituent> left, List<Constituent> right, PlacedClause said) {
        boolean rest = left.size() == 2
                && PlacedClause.is(left.get(0), Tie.AFTER)
                && left.get(1) instanceof Constituent.Silence
                && said.scope().time().isEmpty()
                && said.bars().size() == 1
                && stage.timeline().has(said.bars().get(0));
        var rests = rest
                ? stage.events(List.of(stage.timeline().whole(said.bars().get(0)))).stream()
                        .filter(Together::isRest)
                        .toList()
                : List.<Together>of();
        return rests.size() == 1 && !right.isEmpty()
                ? Items.of(right, stage).flatMap(row -> coming.after(row.items(), rests.get(0), said))
                : Optional.empty();
    }

    private Optional<Judged> fragment(PlacedClause said) {
        var left = new ArrayList<Constituent>();
        var right = new ArrayList<Constituent>();
        for (var unit : said.units()) {
            boolean points = PlacedClause.is(unit, Tie.ALL)
                    || PlacedClause.is(unit, Tie.BOTH)
                    || PlacedClause.is(unit, Tie.THEY)
                    || unit instanceof Constituent.Number
                    || unit instanceof Constituent.Count;
            boolean idle =
                    PlacedClause.is(unit, Tie.WE) || PlacedClause.is(unit, Tie.SO) || PlacedClause.is(unit, Tie.AND);
            if (points) {
                left.add(unit);
            } else if (!idle) {
                right.add(unit);
            }
        }
        if (left.isEmpty()) {
            left.add(new Constituent.Small(Tie.THEY));
        }
        return right.isEmpty() ? Optional.empty() : known.told(left, right, said);
    }
}
