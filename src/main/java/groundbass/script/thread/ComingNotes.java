package groundbass.script.thread;

import groundbass.score.Fraction;
import groundbass.score.Position;
import groundbass.script.checking.Right;
import groundbass.script.checking.Timeline.At;
import groundbass.script.checking.Timeline.Stretch;
import groundbass.script.grammar.Constituent;
import groundbass.script.grammar.Constituent.Tie;
import groundbass.script.thread.stage.Item;
import groundbass.script.thread.stage.Items;
import groundbass.script.thread.stage.Judged;
import groundbass.script.thread.stage.Part;
import groundbass.script.thread.stage.PlacedClause;
import groundbass.script.thread.stage.Runs;
import groundbass.script.thread.stage.Scope;
import groundbass.script.thread.stage.Stage;
import groundbass.script.thread.stage.Together;
import groundbass.script.thread.stage.Wrongs;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;

/** Judges notes and rests that are said to come: at a time, in a bar, after others, or somewhere in the bar in hand. */
final class ComingNotes {
    /** So many names in a row mean one place of the bar. */
    private static final int ROW = 3;

    private final Stage stage;

    ComingNotes(Stage stage) {
        this.stage = stage;
    }

    Optional<Judged> presented(List<Constituent> left, List<Constituent> right, PlacedClause said) {
        boolean after = left.stream().anyMatch(unit -> PlacedClause.is(unit, Tie.AFTER));
        var units = new ArrayList<Constituent>(right);
        boolean then = leads(left)
                || !units.isEmpty()
                        && (PlacedClause.is(units.get(0), Tie.THEN) || PlacedClause.is(units.get(0), Tie.AFTER));
        units.removeIf(unit -> PlacedClause.is(unit, Tie.AFTER));
        while (!units.isEmpty()
                && (PlacedClause.is(units.get(0), Tie.THEN)
                        || PlacedClause.is(units.get(0), Tie.IT)
                        || PlacedClause.is(units.get(0), Tie.COMMA)
                        || PlacedClause.is(units.get(0), Tie.AND))) {
            units.remove(0);
        }
        var row = units.isEmpty() ? Optional.<Items.Row>empty() : Items.of(units, stage);
        if (row.isEmpty()) {
            return Optional.empty();
        }
        var items = row.get().items();
        if (said.scope().time().isPresent()) {
            return timed(items, said);
        }
        if (said.scope().isSaid()) {
            return said.scope().bars().size() == 1
                    ? inBar(items, said.scope().bars().get(0), said)
                    : Optional.empty();
        }
        return (then || after) && !said.memory().notes().isEmpty() ? next(items, said) : inHand(items, said);
    }

    private static boolean leads(List<Constituent> left) {
        return left.stream().anyMatch(unit -> PlacedClause.is(unit, Tie.THEN));
    }

    private Optional<Judged> timed(List<Item> items, PlacedClause said) {
        var stretches =
                stage.stretches(said.bars(), said.scope().time(), said.memory().beat());
        if (stretches.isEmpty()) {
            return Optional.empty();
        }
        var time = said.scope().time().get();
        if (time instanceof Scope.Parts && stretches.size() == items.size() && items.size() > 1) {
            return Optional.of(atMoments(items, stretches));
        }
        if (time instanceof Scope.Parts && items.size() == 1 && stretches.size() > 1) {
            return Optional.empty();
        }
        var events = stage.events(stretches);
        boolean several = said.bars().size() > 1;
        if (several) {
            return Optional.empty();
        }
        return Optional.of(inArea(items, stretches, events, said, time));
    }

    private Judged atMoments(List<Item> items, List<Stretch> moments) {
        var notes = stage.notes(moments);
        for (int i = 0; i < items.size(); i++) {
            var event = stage.events(List.of(moments.get(i))).stream().findFirst();
            if (event.filter(items.get(i)::equals).isEmpty()
                    && event.filter(isAs(items.get(i))).isEmpty()) {
                return Judged.wrong(Wrongs.start(moments.get(i), items.get(i), stage), notes);
            }
        }
        return Judged.agrees(notes);
    }

    private static Predicate<Together> isAs(Item item) {
        return event -> event.fits(item);
    }

    private Judged inArea(
            List<Item> items, List<Stretch> stretches, List<Together> events, PlacedClause said, Scope.Time time) {
        var start = stretches.get(0);
        int first = Runs.find(items, events);
        var met = first < 0
                ? stage.notes(stretches)
                : Runs.met(items, events.subList(first, first + items.size()), stage);
        boolean begins = first >= 0 && events.get(first).from().equals(start.from());
        boolean pause = first > 0 && events.subList(0, first).stream().allMatch(Together::isRest);
        boolean moment = time instanceof Scope.Parts;
        boolean wholly = first == 0 && items.size() == events.size();
        if (items.size() == 1 && items.get(0).rest()) {
            return rest(items.get(0), stretches, events, said);
        }
        if (said.has(Tie.BEAT) && !begins) {
            return Judged.wrong(Wrongs.start(start, items.get(0), stage), met);
        }
        if (begins || pause && !moment && !said.has(Tie.HOLD)) {
            boolean triplet = items.get(0).has(Part.Kind.TUPLET);
            return wholly || begins || triplet || pause ? Judged.agrees(met) : Judged.open(met);
        }
        if (first > 0 && !moment) {
            boolean somewhere = items.size() == 1 && said.hasAny(Tie.THERE, Tie.HAVE);
            return somewhere ? Judged.agrees(met) : Judged.open(met);
        }
        if (!moment && Runs.isScattered(items, events)) {
            return Judged.open(met);
        }
        if (Runs.isOneOfMany(items, events)) {
            return Judged.open(met);
        }
        return items.size() == 1 || Runs.isDenied(items, events)
                ? Judged.wrong(Wrongs.first(items, events, start, stage), met)
                : Judged.mixed(met);
    }

    /** A rest at a beat: silence from its start; what is "silent" is so to its end. */
    private Judged rest(Item item, List<Stretch> stretches, List<Together> events, PlacedClause said) {
        var notes = stage.notes(stretches);
        boolean begins = !events.isEmpty()
                && events.get(0).isRest()
                && events.get(0).from().equals(stretches.get(0).from());
        if (!begins) {
            return Judged.wrong(Wrongs.start(stretches.get(0), item, stage), notes);
        }
        boolean whole = notes.isEmpty();
        if (item.length().isPresent() && !isWritten(item.length().get(), stretches.get(0), events.get(0))) {
            return Judged.wrong(Wrongs.start(stretches.get(0), item, stage), notes);
        }
        boolean placed = said.hasAny(Tie.HAVE, Tie.PLAY, Tie.THERE, Tie.WE)
                || item.length().isPresent();
        return whole || placed ? Judged.agrees(List.of()) : Judged.open(List.of());
    }

    /** A rest may be called by how it is written, by how long silence lasts in the beat, or by how long it lasts in all. */
    private boolean isWritten(Fraction said, Stretch stretch, Together silence) {
        var timeline = stage.timeline();
        var until = timeline.silentUntil(stretch.bar(), stretch.from());
        return said.equals(silence.to().minus(silence.from()))
                || said.equals(until.minus(stretch.from()))
                || timeline.isWrittenRest(new Position(stretch.bar(), stretch.from()), said);
    }

    private Optional<Judged> inBar(List<Item> items, int bar, PlacedClause said) {
        if (!stage.timeline().has(bar)) {
            return Optional.empty();
        }
        var whole = stage.timeline().whole(bar);
        var events = stage.events(List.of(whole));
        int first = Runs.find(items, events);
        if (first >= 0) {
            var met = Runs.met(items, events.subList(first, first + items.size()), stage);
            boolean complete = items.size() == events.size() || items.size() == 1 || !said.has(Tie.BE);
            return Optional.of(complete ? Judged.agrees(met) : Judged.open(met));
        }
        var missing = items.stream()
                .filter(item -> events.stream().noneMatch(event -> event.fits(item)))
                .findFirst();
        return Optional.of(missing.map(item -> Judged.wrong(Runs.nearest(item, events, whole, stage), stage.notes(bar)))
                .orElseGet(() -> Judged.open(stage.notes(bar))));
    }

    /** After the notes that were spoken of last. */
    Optional<Judged> next(List<Item> items, PlacedClause said) {
        var last = said.memory().notes().get(said.memory().notes().size() - 1);
        return coming(
                items, events(last.bar(), last.note().onset()), said.memory().sure(), said);
    }

    /** After a silence. */
    Optional<Judged> after(List<Item> items, Together rest, PlacedClause said) {
        return coming(items, events(rest.bar(), rest.from()), true, said);
    }

    private List<Together> events(int bar, Fraction after) {
        return stage.events(List.of(stage.timeline().whole(bar))).stream()
                .filter(event -> event.from().isAfter(after))
                .toList();
    }

    /** @param sure whether nobody can have meant other notes to come after */
    private Optional<Judged> coming(List<Item> items, List<Together> events, boolean sure, PlacedClause said) {
        if (events.isEmpty()) {
            return Optional.empty();
        }
        boolean alike = items.size() > 1 && items.stream().allMatch(items.get(0)::equals);
        if (alike) {
            return Optional.of(amount(items, events));
        }
        int first = Runs.find(items, events);
        boolean at = first == 0
                || first == 1 && events.get(0).isRest() && !items.get(0).rest();
        if (at) {
            return Optional.of(Judged.agrees(Runs.met(items, events.subList(first, first + items.size()), stage)));
        }
        boolean between = said.directly() && sure && !events.get(0).fits(items.get(0));
        if (first > 0 && !between) {
            return Optional.of(Judged.open(Runs.met(items, events.subList(first, first + items.size()), stage)));
        }
        boolean none = events.stream().noneMatch(event -> event.fits(items.get(0)));
        var event = events.get(0);
        return Optional.of(
                (none || between || Runs.isTurned(items, events)) && sure
                        ? Judged.wrong(
                                Wrongs.start(new Stretch(event.bar(), event.from(), event.to()), items.get(0), stage),
                                event.notes())
                        : Judged.open(List.of()));
    }

    /** "Then four quavers": no fewer may come, and right after them something else. */
    private Judged amount(List<Item> items, List<Together> events) {
        var sounding = events.stream().filter(event -> !event.isRest()).toList();
        long there = sounding.stream().filter(event -> event.fits(items.get(0))).count();
        boolean first = Runs.find(items, sounding) == 0;
        boolean more =
                sounding.size() > items.size() && sounding.get(items.size()).fits(items.get(0));
        var met = first ? Runs.notes(sounding.subList(0, items.size())) : List.<At>of();
        if (first && !more) {
            return Judged.agrees(met);
        }
        return there < items.size() ? Judged.wrong(new Right.CountThere((int) there), met) : Judged.open(met);
    }

    /** Whether name, string and fret were all said, so that it is true wherever in the bar it is. */
    private static boolean isWhole(Item item) {
        return item.has(Part.Kind.NAME) && item.has(Part.Kind.STRING) && item.has(Part.Kind.FRET);
    }

    /** Somewhere in the bar in hand: where that is, was not said, so that it can be neither right nor wrong. */
    private Optional<Judged> inHand(List<Item> items, PlacedClause said) {
        var bar = said.memory().bar().filter(stage.timeline()::has);
        if (bar.isEmpty()) {
            return Optional.empty();
        }
        var events = stage.events(List.of(stage.timeline().whole(bar.get())));
        int first = Runs.find(items, events);
        var met = first < 0 ? List.<At>of() : Runs.met(items, events.subList(first, first + items.size()), stage);
        boolean row = items.size() >= ROW && items.stream().allMatch(item -> item.has(Part.Kind.NAME));
        boolean told = first >= 0 && (row || items.size() == 1 && isWhole(items.get(0)));
        return Optional.of(told ? Judged.agrees(met) : Judged.open(met));
    }
}
