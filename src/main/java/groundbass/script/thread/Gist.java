package groundbass.script.thread;

import groundbass.score.Fraction;
import groundbass.script.checking.Timeline.At;
import groundbass.script.grammar.Constituent;
import groundbass.script.grammar.Constituent.Rank;
import groundbass.script.grammar.Constituent.Tie;
import groundbass.script.thread.stage.Area;
import groundbass.script.thread.stage.Descriptions;
import groundbass.script.thread.stage.Descriptions.Description;
import groundbass.script.thread.stage.Item;
import groundbass.script.thread.stage.Judged;
import groundbass.script.thread.stage.Part;
import groundbass.script.thread.stage.PlacedClause;
import groundbass.script.thread.stage.Reserve;
import groundbass.script.thread.stage.Runs;
import groundbass.script.thread.stage.Scope;
import groundbass.script.thread.stage.Stage;
import groundbass.script.thread.stage.Together;
import groundbass.script.thread.stage.Wrongs;
import groundbass.theory.ChordSymbol.Chord;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * Takes of a clause that was not understood to its end what it says of notes, and contradicts what is so of no note that
 * it may be speaking of. It never agrees: the words that were not understood may say more.
 */
final class Gist implements Reader {
    /** From so many names in a row on, their order is meant. */
    private static final int ROW = 3;

    private static final int OCTAVE = 12;

    private final Stage stage;

    Gist(Stage stage) {
        this.stage = stage;
    }

    @Override
    public Optional<Judged> read(PlacedClause said) {
        boolean bare = said.units().size() == 1
                && said.has(Constituent.Name.class)
                && said.scope().equals(Scope.NOTHING);
        boolean distance = said.has(Constituent.Interval.class) && said.hasAny(Tie.FROM, Tie.TO);
        return bare || distance || Reserve.isIn(said)
                ? Optional.empty()
                : Area.of(said, stage).flatMap(area -> read(said, area));
    }

    private Optional<Judged> read(PlacedClause whole, Area area) {
        var said = whole.with(withoutHarmony(withoutSource(whole.with(atItsTime(whole)))));
        var told = Descriptions.of(said.units(), stage);
        boolean rest = said.has(Constituent.Silence.class);
        if (rest && area.events().stream().noneMatch(Together::isRest)) {
            return Optional.of(wrong(Item.rest(Optional.empty()), area));
        }
        if (rest && said.has(Constituent.Lasting.class)) {
            return silence(said, area);
        }
        for (var description : told) {
            if (!isSomewhere(description, area, said)) {
                return Optional.of(wrong(description.item(), area).at(description.wrong(area.notes())));
            }
        }
        return row(said, area)
                .or(() -> turned(whole, area))
                .or(() -> amount(said, area))
                .or(() -> octave(told, said, area))
                .or(() -> nth(told, said, area))
                .or(() -> pointed(told, said))
                .or(() -> met(told, said, area));
    }

    /** "Over F, that is F, A and C": names behind a chord are its notes. */
    private static List<Constituent> withoutHarmony(List<Constituent> units) {
        int over = 0;
        while (over < units.size() && !PlacedClause.is(units.get(over), Tie.OVER)) {
            over++;
        }
        int after = over + 1;
        while (after < units.size() && isOfChord(units.get(after))) {
            after++;
        }
        boolean way = units.stream()
                .anyMatch(unit -> PlacedClause.is(unit, Tie.UP) || PlacedClause.is(unit, Tie.DOWN)); // "runter über D"
        boolean several = !way
                && over < units.size()
                && units.subList(over, after).stream()
                                .filter(Constituent.Name.class::isInstance)
                                .count()
                        > 1;
        if (!several) {
            return units;
        }
        var rest = new ArrayList<>(units);
        rest.subList(over, after).clear();
        return rest;
    }

    private static boolean isOfChord(Constituent unit) {
        return unit instanceof Constituent.Name
                || unit instanceof Constituent.ChordNamed
                || unit instanceof Constituent.KeyNamed
                || PlacedClause.is(unit, Tie.COMMA)
                || PlacedClause.is(unit, Tie.AND);
    }

    /** "The C on three is reached from the B": what something comes from is not where it is. */
    private static List<Constituent> withoutSource(PlacedClause said) {
        var rest = new ArrayList<Constituent>();
        boolean source = false;
        for (var unit : said.units()) {
            source = PlacedClause.is(unit, Tie.FROM)
                    || source
                            && !PlacedClause.is(unit, Tie.TO)
                            && !PlacedClause.is(unit, Tie.COMMA)
                            && !PlacedClause.is(unit, Tie.AND)
                            && !PlacedClause.is(unit, Tie.WE);
            if (!source) {
                rest.add(unit);
            }
        }
        return said.scope().time().isPresent() ? rest : said.units();
    }

    /** "On the e of two comes the octave, and then A": what comes then, comes later than the time that was said. */
    private static List<Constituent> atItsTime(PlacedClause said) {
        var units = said.units();
        for (int i = 1; i < units.size(); i++) {
            if (PlacedClause.is(units.get(i), Tie.THEN) && said.scope().time().isPresent()) {
                return units.subList(0, i);
            }
        }
        return units;
    }

    private Judged wrong(Item item, Area area) {
        var right = Runs.nearest(item, area.events(), area.stretches().get(0), stage);
        boolean timed = area.stretches().size() == 1 && !area.notes().isEmpty();
        return Judged.wrong(right, timed ? List.of(Runs.mostLike(item, area.notes())) : List.of());
    }

    private boolean isSomewhere(Description description, Area area, PlacedClause said) {
        var item = description.item();
        boolean length = item.kinds().equals(List.of(Part.Kind.LENGTH));
        boolean harmony = item.kinds().equals(List.of(Part.Kind.NAME))
                && said.scope().time().isEmpty();
        return area.notes().stream().anyMatch(item::fits)
                || length && said.has(Constituent.Silence.class)
                || harmony && isRoot(description.unit(), area)
                || said.scope().time().isEmpty() && description.ahead() && isNext(item, area)
                || isOfNeck(said);
    }

    /** What a clause leads to may come in the bar after; after the last comes the first. */
    private boolean isNext(Item item, Area area) {
        int last = area.stretches().get(area.stretches().size() - 1).bar();
        int next = last == stage.timeline().lastBar() ? stage.timeline().line().firstNumber() : last + 1;
        return stage.notes(next).stream().anyMatch(item::fits);
    }

    /** "The twelfth fret of the E string is an E again" is so of the neck, whatever the line does. */
    private boolean isOfNeck(PlacedClause said) {
        boolean here = said.scope().isSaid() || said.scope().time().isPresent();
        return !here
                && new NeckReader(stage)
                        .read(said.with(neck(said.units())))
                        .filter(Judged::agrees)
                        .isPresent();
    }

    private static List<Constituent> neck(List<Constituent> units) {
        return units.stream()
                .filter(unit -> unit instanceof Constituent.Place
                        || unit instanceof Constituent.Name
                        || PlacedClause.is(unit, Tie.BE))
                .toList();
    }

    /** A name alone may be that of a chord. */
    private boolean isRoot(Constituent unit, Area area) {
        return unit instanceof Constituent.Name name
                && area.stretches().stream()
                        .flatMap(stretch -> stage.chords(stretch.bar()).stream())
                        .anyMatch(chord -> chord instanceof Chord there
                                && there.root().pitchClass() == name.name().pitchClass());
    }

    /** "Two beats of rest": somewhere silence lasts so long, or all silences together do. */
    private Optional<Judged> silence(PlacedClause said, Area area) {
        var lasting = said.only(Constituent.Lasting.class).filter(length -> !length.ofBar());
        if (lasting.isEmpty() || !said.has(Constituent.Silence.class)) {
            return Optional.empty();
        }
        var rests = area.events().stream().filter(Together::isRest).toList();
        var all = rests.stream().map(rest -> rest.to().minus(rest.from())).reduce(Fraction.ZERO, Fraction::plus);
        boolean there = Stream.concat(rests.stream().map(rest -> rest.to().minus(rest.from())), Stream.of(all))
                .anyMatch(length ->
                        isBeats(length, lasting.get(), area.stretches().get(0).bar()));
        return there
                ? Optional.empty()
                : Optional.of(Judged.wrong(
                        Wrongs.start(area.stretches().get(0), Item.rest(Optional.empty()), stage), List.of()));
    }

    private boolean isBeats(Fraction length, Constituent.Lasting said, int bar) {
        var meter = stage.timeline().at(bar).meter();
        return length.equals(meter.count().times(said.amount()))
                || length.equals(meter.pulse().times(said.amount()));
    }

    /** Names in a row come in that order, with nothing between but dead notes and notes that come again. */
    private Optional<Judged> row(PlacedClause said, Area area) {
        for (var names : rows(said.units())) {
            boolean dead = names.stream().anyMatch(Constituent.Dead.class::isInstance);
            var sounding = stage.notes(area.stretches()).stream()
                    .filter(at -> dead || !at.note().isDead())
                    .toList();
            var parts = names.stream().map(this::part).toList();
            boolean there = Runs.isRow(parts, sounding) || Runs.isRow(parts, once(sounding));
            if (parts.size() >= ROW && !there) {
                return Optional.of(wrong(Item.NOTHING.with(parts.get(0)), area).at(names.get(0)));
            }
        }
        return Optional.empty();
    }

    /** "The F, and then the E flat": both are there, and never in that order, not even into the next bar. */
    private Optional<Judged> turned(PlacedClause said, Area area) {
        var told = Descriptions.of(said.units(), stage);
        var items = told.stream().map(Description::item).toList();
        boolean order = said.has(Tie.THEN) && !said.hasAny(Tie.AFTER, Tie.BEFORE, Tie.TO, Tie.FROM, Tie.BETWEEN);
        boolean heads = items.size() == 2
                && items.stream()
                        .allMatch(item ->
                                item.has(Part.Kind.NAME) || item.has(Part.Kind.DEAD) || item.has(Part.Kind.MANNER));
        boolean timed = said.scope().time().isPresent();
        boolean one = timed ? area.stretches().size() == 1 : said.bars().size() == 1;
        if (!order || !heads || !one) {
            return Optional.empty();
        }
        var events = new ArrayList<Together>(
                timed
                        ? area.events()
                        : stage.events(
                                List.of(stage.timeline().whole(said.bars().get(0)))));
        boolean open = !timed && stage.timeline().has(said.bars().get(0) + 1);
        if (open) {
            var next = stage.timeline().whole(said.bars().get(0) + 1);
            stage.events(List.of(next)).stream().limit(1).forEach(events::add);
        }
        return Runs.isTurned(items, events)
                ? Optional.of(wrong(items.get(0), area).at(told.get(0).unit()))
                : Optional.empty();
    }

    private Part part(Constituent unit) {
        if (unit instanceof Constituent.Name name) {
            return Part.name(name.name(), stage.timeline(), stage.neck());
        }
        return unit instanceof Constituent.Played played ? Part.manner(played.manner()) : Part.dead();
    }

    /** Without the notes that repeat the one before them. */
    private List<At> once(List<At> notes) {
        var all = new ArrayList<At>();
        for (var at : notes) {
            boolean again =
                    !all.isEmpty() && stage.midi(all.get(all.size() - 1)).equals(stage.midi(at));
            if (!again) {
                all.add(at);
            }
        }
        return all;
    }

    private static List<List<Constituent>> rows(List<Constituent> units) {
        var rows = new ArrayList<List<Constituent>>();
        var open = new ArrayList<Constituent>();
        for (var unit : units) {
            boolean tie = PlacedClause.is(unit, Tie.COMMA)
                    || PlacedClause.is(unit, Tie.AND)
                    || PlacedClause.is(unit, Tie.THEN);
            boolean played = unit instanceof Constituent.Played;
            boolean other = !open.isEmpty() && played != open.get(0) instanceof Constituent.Played;
            if (other) {
                rows.add(List.copyOf(open));
                open.clear();
            }
            if (played || unit instanceof Constituent.Name || unit instanceof Constituent.Dead) {
                open.add(unit);
            } else if (!tie) {
                rows.add(List.copyOf(open));
                open.clear();
            }
        }
        rows.add(List.copyOf(open));
        return rows;
    }

    /** "Beat four is two semiquavers": so many of one thing at a time of a bar. A triplet has no plain quavers. */
    private Optional<Judged> amount(PlacedClause said, Area area) {
        var count = said.only(Constituent.Count.class)
                .filter(many -> !said.hasAny(Tie.BETWEEN, Tie.AFTER) && !isOfNotes(many, said.units()));
        var told = Descriptions.of(said.units(), stage);
        boolean rests = area.events().stream().anyMatch(Together::isRest);
        boolean open = said.scope().time().isEmpty() || area.stretches().size() != 1 || rests;
        if (count.isEmpty() || told.size() != 1 || open) {
            return Optional.empty();
        }
        var item = told.get(0).item();
        boolean plain = item.has(Part.Kind.LENGTH) && !item.has(Part.Kind.TUPLET);
        long there = stage.notes(area.stretches()).stream()
                .filter(item::fits)
                .filter(at -> !plain || !Part.isTuplet(at))
                .map(at -> at.note().onset())
                .distinct()
                .count();
        return there < count.get().many() ? Optional.of(wrong(item, area)) : Optional.empty();
    }

    /** "Five notes": of which kind they are, was not said. */
    private static boolean isOfNotes(Constituent.Count count, List<Constituent> units) {
        int next = units.indexOf(count) + 1;
        return next < units.size() && PlacedClause.is(units.get(next), Tie.NOTE);
    }

    /** "Up an octave to the fifth fret of the G string": some note near lies an octave from what is there. */
    private Optional<Judged> octave(List<Description> told, PlacedClause said, Area area) {
        var octaves = said.only(Constituent.Octaves.class);
        if (octaves.isEmpty() || said.has(Tie.APART)) {
            return Optional.empty();
        }
        var bars = area.stretches().stream().flatMap(stretch -> stage.notes(stretch.bar()).stream());
        var near = Stream.concat(bars, Stream.concat(area.notes().stream(), said.memory().notes().stream()))
                .flatMap(at -> stage.midi(at).stream())
                .toList();
        int distance = OCTAVE * octaves.get().many();
        for (var description : told) {
            var item = description.item();
            boolean pitched = item.has(Part.Kind.NAME) || item.has(Part.Kind.STRING) && item.has(Part.Kind.FRET);
            boolean some = area.notes().stream()
                    .filter(item::fits)
                    .flatMap(at -> stage.midi(at).stream())
                    .anyMatch(midi -> near.contains(midi - distance) || near.contains(midi + distance));
            if (pitched && !some) {
                return Optional.of(wrong(item, area).at(description.unit()));
            }
        }
        return Optional.empty();
    }

    /** "The second note is a C", "the last D is on the A string": of the bar, or of the notes spoken of last. */
    private Optional<Judged> nth(List<Description> told, PlacedClause said, Area area) {
        var rank = said.only(Rank.class);
        boolean plain = !said.hasAny(Tie.AFTER, Tie.TO, Tie.FROM, Tie.WITH, Tie.THEN);
        var of = rank.flatMap(one -> ranked(one, said.units()));
        if (of.isEmpty() || !plain || told.size() != 1 || area.stretches().size() != 1) {
            return Optional.empty();
        }
        var all = stage.notes(area.stretches());
        var pitched = all.stream().filter(at -> !at.note().isDead()).toList();
        var meant = Stream.of(all, pitched, said.memory().notes())
                .map(notes -> notes.stream().filter(of.get()::fits).toList())
                .flatMap(notes -> pick(rank.get(), notes).stream())
                .toList();
        boolean fits = meant.stream().anyMatch(told.get(0)::fits);
        return meant.isEmpty() || fits
                ? Optional.empty()
                : Optional.of(Judged.wrong(Wrongs.note(meant.get(0), told.get(0).item(), stage), meant));
    }

    /** What is counted: any note, or such as the next word says. */
    private Optional<Item> ranked(Rank rank, List<Constituent> units) {
        int next = units.indexOf(rank) + 1;
        if (next == units.size()) {
            return Optional.empty();
        }
        if (PlacedClause.is(units.get(next), Tie.NOTE)) {
            return Optional.of(Item.NOTHING);
        }
        return units.get(next) instanceof Constituent.Name || units.get(next) instanceof Constituent.Dead
                ? Descriptions.of(List.of(units.get(next)), stage).stream()
                        .map(Description::item)
                        .findFirst()
                : Optional.empty();
    }

    private static Optional<At> pick(Rank rank, List<At> notes) {
        return switch (rank.which()) {
            case NTH -> notes.stream().skip(rank.nth() - 1L).findFirst();
            case LAST -> notes.stream().reduce((one, two) -> two);
            case MIDDLE, NEXT, HIGHEST, LOWEST -> Optional.empty();
        };
    }

    /** "That's at the third fret": of the one note that was spoken of just now, and no other. */
    private Optional<Judged> pointed(List<Description> told, PlacedClause said) {
        var notes = said.memory().notes();
        boolean here = !said.scope().isSaid() && said.scope().time().isEmpty();
        boolean points =
                isPointing(said.units()) && !said.hasAny(Tie.THEN, Tie.AFTER, Tie.TO, Tie.FROM, Tie.AND, Tie.THEY);
        boolean one = notes.size() == 1
                && told.size() == 1
                && told.get(0).item().kinds().stream().noneMatch(kind -> kind == Part.Kind.NAME);
        return here && points && one && !told.get(0).fits(notes.get(0))
                ? Optional.of(Judged.wrong(Wrongs.note(notes.get(0), told.get(0).item(), stage), notes))
                : Optional.empty();
    }

    /** Whether "it" or "that" comes before anything is said of it. */
    private static boolean isPointing(List<Constituent> units) {
        return units.stream()
                .takeWhile(unit -> unit instanceof Constituent.Small)
                .anyMatch(unit -> PlacedClause.is(unit, Tie.IT) || PlacedClause.is(unit, Tie.THAT));
    }

    /** What was spoken of: the only note that is as described, or all that begin at a time. */
    private Optional<Judged> met(List<Description> told, PlacedClause said, Area area) {
        var notes = area.notes().stream()
                .filter(at -> told.stream().anyMatch(item -> item.fits(at)))
                .toList();
        if (told.size() == 1 && notes.size() == 1) {
            return Optional.of(Judged.mixed(notes));
        }
        boolean timed = said.scope().time().isPresent() && area.stretches().size() == 1;
        return timed && !notes.isEmpty() ? Optional.of(Judged.mixed(stage.notes(area.stretches()))) : Optional.empty();
    }
}
