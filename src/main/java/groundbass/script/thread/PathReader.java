package groundbass.script.thread;

import groundbass.script.checking.Timeline.At;
import groundbass.script.claims.Manner;
import groundbass.script.grammar.Constituent;
import groundbass.script.grammar.Constituent.Tie;
import groundbass.script.thread.stage.Arrivals;
import groundbass.script.thread.stage.Item;
import groundbass.script.thread.stage.Items;
import groundbass.script.thread.stage.Judged;
import groundbass.script.thread.stage.Part;
import groundbass.script.thread.stage.PlacedClause;
import groundbass.script.thread.stage.Stage;
import groundbass.script.thread.stage.Wrongs;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;
import java.util.Set;

/** Slides, hammers and pulls: where they come from and where they go. */
final class PathReader implements Reader {
    private static final Set<Manner> ARRIVALS = Set.of(Manner.SLIDE, Manner.HAMMER, Manner.PULL);
    private static final Set<Tie> IDLE = Set.of(
            Tie.WE, Tie.THEN, Tie.AND, Tie.SO, Tie.COMMA, Tie.COLON, Tie.STOP, Tie.BE, Tie.PLAY, Tie.IT, Tie.THAT,
            Tie.THERE, Tie.UP, Tie.DOWN, Tie.ON, Tie.IN, Tie.AT, Tie.OF, Tie.HAVE, Tie.BUT, Tie.HIGH, Tie.LOW,
            Tie.AGAIN, Tie.ALL, Tie.START, Tie.END, Tie.WITH);

    private final Stage stage;

    PathReader(Stage stage) {
        this.stage = stage;
    }

    @Override
    public Optional<Judged> read(PlacedClause said) {
        var played = said.only(Constituent.Played.class).filter(unit -> ARRIVALS.contains(unit.manner()));
        boolean path = (said.hasAny(Tie.TO, Tie.FROM) || isInto(said.units())) && !hasOrder(said.units());
        var manner = played.map(Constituent.Played::manner).or(() -> inHand(said));
        if (manner.isEmpty() || !path || said.hasAny(Tie.NOT, Tie.NO)) {
            return Optional.empty();
        }
        var sources = new ArrayList<Constituent>();
        var targets = new ArrayList<Constituent>();
        boolean from = !said.has(Tie.FROM) && isFirst(said.units()); // "the hammer is D to E"
        for (var unit : said.units()) {
            if (PlacedClause.is(unit, Tie.FROM)) {
                from = true;
            } else if (PlacedClause.is(unit, Tie.TO)) {
                from = false;
            } else if (from
                    && said.has(Tie.FROM)
                    && PlacedClause.is(unit, Tie.IN)
                    && !sources.isEmpty()
                    && isInto(said.units())) {
                from = false;
            } else if (isAgain(unit, said.units(), targets)) {
                from = true;
            } else if (isFret(unit) || isNamed(unit)) {
                (from ? sources : targets).add(fret(unit));
            } else if (!(unit instanceof Constituent.Played)
                    && !(unit instanceof Constituent.Small small && IDLE.contains(small.tie()))) {
                return Optional.empty();
            }
            boolean both = from
                    && sources.size() == 2
                    && sources.get(0).getClass() == sources.get(1).getClass(); // "from the third to the fifth fret"
            if (both) {
                targets.add(sources.remove(1));
                from = false;
            }
        }
        var source = one(sources);
        var target = one(targets);
        boolean unread = !sources.isEmpty() && source.isEmpty()
                || target.isEmpty() && source.isEmpty()
                || !targets.isEmpty() && target.isEmpty();
        return unread ? Optional.empty() : check(manner.get(), source, target, said);
    }

    /** "From G sharp into F sharp, fourth fret to second": the way is told once more. */
    private static boolean isAgain(Constituent unit, List<Constituent> units, List<Constituent> targets) {
        int at = 0;
        while (units.get(at) != unit) {
            at++;
        }
        var rest = units.subList(at + 1, units.size());
        int to = rest.indexOf(new Constituent.Small(Tie.TO));
        return PlacedClause.is(unit, Tie.COMMA)
                && !targets.isEmpty()
                && to > 0
                && rest.subList(0, to).stream().allMatch(one -> one instanceof Constituent.Place);
    }

    /** "It comes up from the fifth fret": what was spoken of last is a slide. */
    private static Optional<Manner> inHand(PlacedClause said) {
        var notes = said.memory().notes();
        boolean pointed =
                said.hasAny(Tie.IT, Tie.THAT, Tie.WE) && said.has(Tie.FROM) && !said.has(Constituent.Played.class);
        return pointed && !notes.isEmpty()
                ? ARRIVALS.stream()
                        .filter(manner ->
                                manner.fits(notes.get(notes.size() - 1).note()))
                        .findFirst()
                : Optional.empty();
    }

    /** "Ihr hämmert in den vierten Bund". */
    private static boolean isInto(List<Constituent> units) {
        for (int i = 1; i < units.size(); i++) {
            boolean fret = units.get(i) instanceof Constituent.Place place
                    && place.fret().isPresent();
            if (fret && PlacedClause.is(units.get(i - 1), Tie.IN)) {
                return true;
            }
        }
        return false;
    }

    /** Whether something is named before the word that leads to another. */
    private static boolean isFirst(List<Constituent> units) {
        return units.stream()
                .takeWhile(unit -> !PlacedClause.is(unit, Tie.TO))
                .anyMatch(unit -> isFret(unit) || isNamed(unit));
    }

    /** "The first A" is no fret. */
    private static boolean hasOrder(List<Constituent> units) {
        for (int i = 0; i + 1 < units.size(); i++) {
            var next = units.get(i + 1);
            boolean noun = next instanceof Constituent.Name
                    || next instanceof Constituent.Value
                    || PlacedClause.is(next, Tie.NOTE)
                    || PlacedClause.is(next, Tie.ONE);
            if (units.get(i) instanceof Constituent.Rank && noun) {
                return true;
            }
        }
        return false;
    }

    private static boolean isNamed(Constituent unit) {
        return unit instanceof Constituent.Name || unit instanceof Constituent.Open;
    }

    private static boolean isFret(Constituent unit) {
        return unit instanceof Constituent.Place
                || unit instanceof Constituent.Number
                || unit instanceof Constituent.Rank rank && rank.which() == Constituent.Rank.Which.NTH;
    }

    /** After such a verb a bare number is a fret. */
    private static Constituent fret(Constituent unit) {
        if (unit instanceof Constituent.Number number) {
            return new Constituent.Place(Optional.empty(), OptionalInt.empty(), OptionalInt.of(number.value()));
        }
        return unit instanceof Constituent.Rank rank
                ? new Constituent.Place(Optional.empty(), OptionalInt.empty(), OptionalInt.of(rank.nth()))
                : unit;
    }

    private Optional<Item> one(List<Constituent> units) {
        return Items.of(units, stage).filter(row -> row.items().size() == 1).map(row -> row.items()
                .get(0));
    }

    private Optional<Judged> check(Manner manner, Optional<Item> source, Optional<Item> target, PlacedClause said) {
        var bars = said.bars().isEmpty() ? stage.allBars() : said.bars();
        var stretches = stage.stretches(bars, said.scope().time(), said.memory().beat());
        if (stretches.isEmpty()) {
            return Optional.empty();
        }
        var here = new ArrayList<>(stage.notes(stretches));
        boolean open = !said.scope().isSaid()
                && said.scope().time().isEmpty()
                && bars.size() == 1
                && stage.timeline().has(bars.get(0) + 1);
        if (open && here.stream().noneMatch(at -> Part.manner(manner).fits(at))) { // into the next bar
            stage.notes(bars.get(0) + 1).stream()
                    .limit(1)
                    .filter(at -> Part.manner(manner).fits(at))
                    .forEach(here::add);
        }
        var arrivals = here.stream().filter(at -> Part.manner(manner).fits(at)).toList();
        boolean any = said.scope().time().isEmpty()
                && !said.scope().isSaid()
                && arrivals.stream().anyMatch(arrival -> !fits(arrival, source, target)); // of which, was not said
        for (var arrival : arrivals) {
            if (fits(arrival, source, target)) {
                return Optional.of(any ? Judged.mixed(path(arrival)) : Judged.agrees(path(arrival)));
            }
        }
        if (!arrivals.isEmpty()) {
            var arrival = arrivals.get(0);
            boolean wrongTarget = target.filter(item -> !item.fits(arrival)).isPresent();
            var wrong = wrongTarget ? arrival : Arrivals.source(arrival, stage).orElse(arrival);
            return Optional.of(Judged.wrong(
                    Wrongs.note(wrong, wrongTarget ? target.get() : source.orElse(Item.NOTHING), stage),
                    path(arrival)));
        }
        boolean sure = said.scope().isSaid() || said.scope().time().isPresent();
        var met = here.stream()
                .filter(at -> target.filter(item -> item.fits(at)).isPresent())
                .findFirst();
        var item = Item.NOTHING.with(Part.manner(manner));
        return met.map(at -> Judged.wrong(Wrongs.note(at, item, stage), path(at)))
                .or(() -> sure
                        ? Optional.of(Judged.wrong(Wrongs.start(stretches.get(0), item, stage), here))
                        : Optional.empty());
    }

    private List<At> path(At arrival) {
        return Arrivals.source(arrival, stage)
                .map(source -> List.of(source, arrival))
                .orElse(List.of(arrival));
    }

    private boolean fits(At arrival, Optional<Item> source, Optional<Item> target) {
        boolean there = target.filter(item -> !item.fits(arrival)).isEmpty();
        boolean from = source.filter(item ->
                        Arrivals.source(arrival, stage).filter(item::fits).isEmpty())
                .isEmpty();
        return there && from;
    }
}
