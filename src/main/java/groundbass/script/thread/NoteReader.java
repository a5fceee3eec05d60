package groundbass.script.thread;

import groundbass.score.Fraction;
import groundbass.score.Position;
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
import groundbass.script.thread.stage.Subject;
import groundbass.script.thread.stage.Together;
import groundbass.script.thread.stage.Wrongs;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;

/** Notes and rests that come somewhere, one after another, and what notes that were spoken of are. */
final class NoteReader implements Reader {
    private static final Set<Tie> VERBS = Set.of(Tie.BE, Tie.HAVE, Tie.PLAY, Tie.HOLD, Tie.FALL);

    /** So many names in a row mean one place of the bar. */
    private static final int ROW = 3;

    private final Stage stage;

    NoteReader(Stage stage) {
        this.stage = stage;
    }

    @Override
    public Optional<Judged> read(PlacedClause said) {
        boolean path = said.hasAny(Tie.TO, Tie.FROM) && said.has(Constituent.Played.class);
        if (path || hasTwoVerbs(said.units())) {
            return Optional.empty();
        }
        if (isFragment(said)) {
            return fragment(said);
        }
        return plain(said.with(withoutReference(said.units())));
    }

    /** "After that" is no more than "after". */
    private static List<Constituent> withoutReference(List<Constituent> units) {
        var plain = new ArrayList<Constituent>();
        for (int i = 0; i < units.size(); i++) {
            boolean pointing = PlacedClause.is(units.get(i), Tie.THAT) || PlacedClause.is(units.get(i), Tie.IT);
            if (!pointing || i == 0 || !PlacedClause.is(units.get(i - 1), Tie.AFTER)) {
                plain.add(units.get(i));
            }
        }
        return plain;
    }

    private Optional<Judged> plain(PlacedClause said) {
        int verb = verb(said.units());
        var left = verb < 0 ? List.<Constituent>of() : said.units().subList(0, verb);
        var right = right(said.units(), verb);
        boolean all = verb > 0
                && !right.isEmpty()
                && (PlacedClause.is(right.get(0), Tie.ALL) || PlacedClause.is(right.get(0), Tie.BOTH));
        if (all) { // "they're all slapped"
            left = Stream.concat(left.stream(), Stream.of(right.get(0))).toList();
            right = right.subList(1, right.size());
        }
        var each = all ? everyThere(left, right, said) : Optional.<Judged>empty();
        if (each.isPresent()) {
            return each;
        }
        var object = object(said.units(), verb, left);
        if (object.isPresent()) {
            return told(
                    List.of(object.get()),
                    right.stream().filter(unit -> unit != object.get()).toList(),
                    said);
        }
        if (Subject.isNone(left)) {
            return presented(left, right, said);
        }
        var anchor = anchor(left, said);
        if (anchor.isPresent()) {
            return after(anchor.get(), right, said);
        }
        boolean dummy = left.stream()
                .allMatch(unit -> Subject.isNone(List.of(unit))
                        || PlacedClause.is(unit, Tie.IT)
                        || PlacedClause.is(unit, Tie.THAT));
        boolean placed = said.scope().time().isPresent();
        boolean follows = !right.isEmpty() && PlacedClause.is(right.get(0), Tie.THEN); // "it is followed by"
        return dummy && (placed || follows) ? presented(left, right, said) : told(left, right, said);
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
                        .filter(notes -> notes.size() == 1)
                        .map(notes -> notes.get(0))
                : Optional.empty();
    }

    private Optional<Judged> after(At anchor, List<Constituent> right, PlacedClause said) {
        var row = right.isEmpty() ? Optional.<Items.Row>empty() : Items.of(right, stage);
        var memory = said.memory().of(List.of(anchor), true);
        return row.flatMap(items -> next(items.items(), new PlacedClause(said.scope(), said.units(), memory)));
    }

    /** "Beats one and two are both crotchets": whatever happens there is as said. */
    private Optional<Judged> everyThere(List<Constituent> left, List<Constituent> right, PlacedClause said) {
        boolean bare = left.stream().allMatch(Constituent.Small.class::isInstance);
        boolean known =
                said.bars().size() == 1 && stage.timeline().has(said.bars().get(0));
        if (!bare || !known || said.scope().time().isEmpty() || left.stream().anyMatch(NoteReader::isPronoun)) {
            return Optional.empty();
        }
        var stretches =
                stage.stretches(said.bars(), said.scope().time(), said.memory().beat());
        return Items.of(right, stage)
                .map(Items.Row::items)
                .filter(items -> items.size() == 1 && !stretches.isEmpty())
                .map(items -> {
                    var notes = stage.notes(stretches);
                    var other = stage.events(stretches).stream()
                            .filter(event -> !event.fits(items.get(0)))
                            .findFirst();
                    return other.map(event -> Judged.wrong(
                                    Wrongs.start(
                                            new Stretch(event.bar(), event.from(), event.to()), items.get(0), stage),
                                    notes))
                            .orElseGet(() -> Judged.agrees(notes));
                });
    }

    private static boolean isPronoun(Constituent unit) {
        return PlacedClause.is(unit, Tie.THEY) || PlacedClause.is(unit, Tie.WE) || PlacedClause.is(unit, Tie.THAT);
    }

    /** Without a verb, something more is said of the notes that were spoken of: "all three on D", "frets two and five". */
    private static boolean isFragment(PlacedClause said) {
        boolean placed = said.scope().isSaid() || said.scope().time().isPresent();
        boolean pointing = said.hasAny(Tie.ALL, Tie.BOTH, Tie.THEY);
        boolean rows = said.all(Constituent.Place.class).size() > 1
                && said.all(Constituent.Place.class).size()
                        == said.memory().notes().size();
        boolean place = isPlaceAlone(said);
        boolean onward = said.hasAny(Tie.THEN, Tie.AFTER);
        return verb(said.units()) < 0 && !placed && !onward && (pointing || rows || place);
    }

    /** "On the A string", "on the fifth fret of the D string": of the note that was spoken of. */
    private static boolean isPlaceAlone(PlacedClause said) {
        boolean on = !said.units().isEmpty()
                && (PlacedClause.is(said.units().get(0), Tie.ON)
                        || PlacedClause.is(said.units().get(0), Tie.IN));
        boolean one = said.units().stream()
                        .filter(unit -> !(unit instanceof Constituent.Small))
                        .allMatch(Constituent.Place.class::isInstance)
                && said.all(Constituent.Place.class).size() == 1;
        return on && one && !said.memory().notes().isEmpty();
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
        return right.isEmpty() ? Optional.empty() : told(left, right, said);
    }

    /** "You find it on ...": what is spoken of comes after the verb. */
    private static Optional<Constituent> object(List<Constituent> units, int verb, List<Constituent> left) {
        boolean we = left.stream().anyMatch(unit -> PlacedClause.is(unit, Tie.WE));
        boolean pronoun = verb >= 0
                && verb + 1 < units.size()
                && (PlacedClause.is(units.get(verb + 1), Tie.IT) || PlacedClause.is(units.get(verb + 1), Tie.THEY));
        boolean german = verb >= 0
                && verb + 2 < units.size()
                && PlacedClause.is(units.get(verb + 1), Tie.WE)
                && PlacedClause.is(units.get(verb + 2), Tie.IT);
        return pronoun && we
                ? Optional.of(units.get(verb + 1))
                : german ? Optional.of(units.get(verb + 2)) : Optional.empty();
    }

    private static boolean hasTwoVerbs(List<Constituent> units) {
        return units.subList(0, Math.max(0, units.size() - 1)).stream()
                        .filter(unit -> PlacedClause.is(unit, Tie.BE))
                        .count()
                > 1;
    }

    private static int verb(List<Constituent> units) {
        for (int i = 0; i < units.size(); i++) {
            if (units.get(i) instanceof Constituent.Small small && VERBS.contains(small.tie())) {
                return i;
            }
        }
        return -1;
    }

    /** What stands after the verb, without words that add nothing. */
    private static List<Constituent> right(List<Constituent> units, int verb) {
        var right = new ArrayList<Constituent>();
        for (var unit : units.subList(verb + 1, units.size())) {
            boolean idle = PlacedClause.is(unit, Tie.WE)
                    || PlacedClause.is(unit, Tie.THERE)
                    || PlacedClause.is(unit, Tie.PLAY)
                    || PlacedClause.is(unit, Tie.BE)
                    || PlacedClause.is(unit, Tie.HAVE)
                    || (right.isEmpty() && PlacedClause.is(unit, Tie.IT));
            if (!idle) {
                right.add(unit);
            }
        }
        return right;
    }

    /** What notes that are known are said to be. */
    private Optional<Judged> told(List<Constituent> left, List<Constituent> right, PlacedClause said) {
        var subject = Subject.of(left, said, stage);
        boolean all = subject.isEmpty() && left.stream().anyMatch(unit -> PlacedClause.is(unit, Tie.NOTE));
        var bar = said.bars().size() == 1 ? said.bars() : List.<Integer>of();
        boolean whole = all && left.stream().allMatch(Constituent.Small.class::isInstance) && !bar.isEmpty();
        if (whole && said.scope().time().isEmpty()) {
            return notesOf(bar.get(0), right);
        }
        var row = right.isEmpty() ? Optional.<Items.Row>empty() : Items.of(right, stage);
        if (subject.isEmpty() || row.isEmpty()) {
            return Optional.empty();
        }
        var notes = subject.get().notes();
        var items = row.get().items();
        if (items.size() > 1) {
            return items.size() == notes.size() && !hasRest(items)
                    ? Optional.of(inOrder(notes, items))
                    : Optional.empty();
        }
        var item = items.get(0);
        if (item.rest()) {
            return Optional.empty();
        }
        var wrong = notes.stream().filter(at -> !item.fits(at)).toList();
        if (wrong.isEmpty()) {
            return Optional.of(Judged.agrees(notes));
        }
        boolean sure = subject.get().together() || wrong.size() == notes.size();
        return Optional.of(sure ? Judged.wrong(Wrongs.note(wrong.get(0), item, stage), notes) : Judged.mixed(notes));
    }

    /** "So the notes are D, E and F": all of the bar, in their order. */
    private Optional<Judged> notesOf(int bar, List<Constituent> right) {
        var row = right.isEmpty() || !stage.timeline().has(bar) ? Optional.<Items.Row>empty() : Items.of(right, stage);
        var events = row.isEmpty()
                ? List.<Together>of()
                : stage.events(List.of(stage.timeline().whole(bar))).stream()
                        .filter(event -> !event.isRest())
                        .toList();
        return row.map(Items.Row::items).filter(items -> items.size() > 1).map(items -> {
            var notes = Runs.notes(events);
            boolean complete = items.size() == events.size();
            if (complete && Runs.find(items, events) == 0) {
                return Judged.agrees(notes);
            }
            return complete && Runs.isDenied(items, events)
                    ? Judged.wrong(wrong(items, events, stage.timeline().whole(bar)), notes)
                    : Judged.open(notes);
        });
    }

    private static boolean hasRest(List<Item> items) {
        return items.stream().anyMatch(Item::rest);
    }

    private Judged inOrder(List<At> notes, List<Item> items) {
        for (int i = 0; i < notes.size(); i++) {
            if (!items.get(i).fits(notes.get(i))) {
                return Judged.wrong(Wrongs.note(notes.get(i), items.get(i), stage), notes);
            }
        }
        return Judged.agrees(notes);
    }

    private Optional<Judged> presented(List<Constituent> left, List<Constituent> right, PlacedClause said) {
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

    private static java.util.function.Predicate<Together> isAs(Item item) {
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
                ? Judged.wrong(wrong(items, events, start), met)
                : Judged.mixed(met);
    }

    private groundbass.script.checking.Right wrong(List<Item> items, List<Together> events, Stretch start) {
        for (int i = 0; i < Math.min(items.size(), events.size()); i++) {
            var event = events.get(i);
            if (!event.fits(items.get(i))) {
                return Wrongs.start(new Stretch(event.bar(), event.from(), event.to()), items.get(i), stage);
            }
        }
        return Wrongs.start(start, items.get(0), stage);
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
    private Optional<Judged> next(List<Item> items, PlacedClause said) {
        var last = said.memory().notes().get(said.memory().notes().size() - 1);
        var events = stage.events(List.of(stage.timeline().whole(last.bar()))).stream()
                .filter(event -> event.from().isAfter(last.note().onset()))
                .toList();
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
        if (first > 0) {
            return Optional.of(Judged.open(Runs.met(items, events.subList(first, first + items.size()), stage)));
        }
        boolean none = events.stream().noneMatch(event -> event.fits(items.get(0)));
        var event = events.get(0);
        return Optional.of(
                none && said.memory().sure()
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
        return there < items.size()
                ? Judged.wrong(new groundbass.script.checking.Right.CountThere((int) there), met)
                : Judged.open(met);
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
