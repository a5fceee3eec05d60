package groundbass.script.thread;

import groundbass.script.checking.Timeline.Stretch;
import groundbass.script.grammar.Constituent;
import groundbass.script.grammar.Constituent.Rank;
import groundbass.script.grammar.Constituent.Tie;
import groundbass.script.thread.stage.Item;
import groundbass.script.thread.stage.Items;
import groundbass.script.thread.stage.Judged;
import groundbass.script.thread.stage.PlacedClause;
import groundbass.script.thread.stage.Runs;
import groundbass.script.thread.stage.Scope;
import groundbass.script.thread.stage.Stage;
import groundbass.script.thread.stage.Together;
import groundbass.script.thread.stage.Wrongs;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** What bars, beats or the line begin and end with. */
final class EdgeReader implements Reader {
    private static final Set<Tie> LEADING = Set.of(
            Tie.START, Tie.END, Tie.WE, Tie.IT, Tie.BE, Tie.PLAY, Tie.SO, Tie.AND, Tie.COMMA, Tie.BUT, Tie.THEN,
            Tie.STOP, Tie.THAT, Tie.ALL, Tie.BOTH, Tie.EACH, Tie.AT, Tie.HAVE, Tie.ONE, Tie.NOTE, Tie.COLON, Tie.OF,
            Tie.IN);

    private final Stage stage;

    EdgeReader(Stage stage) {
        this.stage = stage;
    }

    @Override
    public Optional<Judged> read(PlacedClause said) {
        boolean start = said.has(Tie.START);
        boolean end = said.has(Tie.END);
        var rank = said.units().stream()
                .filter(Rank.class::isInstance)
                .map(Rank.class::cast)
                .findFirst();
        boolean ranked = rank.isPresent() && isNote(said.units(), rank.get()) && !said.has(Tie.THEY);
        boolean first = start
                || ranked && rank.get().which() == Rank.Which.NTH && rank.get().nth() == 1;
        boolean last = end || ranked && rank.get().which() == Rank.Which.LAST;
        if (first == last
                || isOneOf(said.units())
                || said.hasAny(Tie.NOT, Tie.NO, Tie.SAME, Tie.EXCEPT, Tie.TO, Tie.FROM, Tie.UP, Tie.DOWN)) {
            return Optional.empty();
        }
        int many = rank.filter(one -> isNote(said.units(), one))
                .map(one -> amount(said.units(), one))
                .or(() -> said.only(Constituent.Times.class).map(Constituent.Times::many)) // "with a G, three times"
                .orElse(1);
        return Items.of(what(said.units(), many > 1), stage)
                .map(row -> several(row.items(), many))
                .filter(items -> many == 1 || items.size() == many)
                .flatMap(items -> edges(items, last, said)
                        .map(judged -> isOfGroup(items, last, said) ? judged.doubted() : judged));
    }

    /** "Four sixteenths; the last is the F": of those that were spoken of just now, perhaps. */
    private static boolean isOfGroup(List<Item> items, boolean last, PlacedClause said) {
        var notes = said.memory().notes();
        return !said.scope().isSaid()
                && notes.size() > 1
                && items.size() == 1
                && items.get(0).fits(notes.get(last ? notes.size() - 1 : 0));
    }

    /** "One of the last two notes": which of them, was not said. */
    private static boolean isOneOf(List<Constituent> units) {
        return units.size() > 1
                && units.get(0) instanceof Constituent.Count count
                && count.many() == 1
                && PlacedClause.is(units.get(1), Tie.OF);
    }

    /** "The last two are on the E string": what is said of one is so of each. */
    private static List<Item> several(List<Item> items, int many) {
        return items.size() == 1 ? Collections.nCopies(many, items.get(0)) : items;
    }

    private static int amount(List<Constituent> units, Rank rank) {
        int at = units.indexOf(rank) + 1;
        if (at < units.size() && units.get(at) instanceof Constituent.Count count) {
            return count.many();
        }
        return at < units.size() && units.get(at) instanceof Constituent.Number number ? number.value() : 1;
    }

    /** "The last note", "the last thing you play", or a word that means it. */
    private static boolean isNote(List<Constituent> units, Rank rank) {
        int at = units.indexOf(rank) + (amount(units, rank) > 1 ? 2 : 1);
        boolean verb = at < units.size()
                && (PlacedClause.is(units.get(at), Tie.BE)
                        || PlacedClause.is(units.get(at), Tie.WE)
                        || PlacedClause.is(units.get(at), Tie.COLON));
        return verb || at < units.size() && PlacedClause.is(units.get(at), Tie.NOTE);
    }

    /** What is there: all but the words before it that only lead to it. */
    private static List<Constituent> what(List<Constituent> units, boolean counted) {
        var rest = new ArrayList<Constituent>();
        for (int i = 0; i < units.size(); i++) {
            var unit = units.get(i);
            boolean noun = i > 0 && PlacedClause.is(unit, Tie.THERE) && PlacedClause.is(units.get(i - 1), Tie.NOTE);
            boolean amount = unit instanceof Constituent.Count || unit instanceof Constituent.Number;
            if (counted && rest.isEmpty() && amount) {
                continue;
            }
            boolean leads = rest.isEmpty() && unit instanceof Constituent.Small small && LEADING.contains(small.tie());
            boolean idle = unit instanceof Rank
                    || unit instanceof Constituent.Times
                    || leads
                    || noun // "the last note there"
                    || PlacedClause.is(unit, Tie.START);
            if (!idle) {
                rest.add(unit);
            }
        }
        return rest;
    }

    private Optional<Judged> edges(List<Item> items, boolean last, PlacedClause said) {
        var bars = said.bars();
        boolean whole = said.scope().extent() == Scope.Extent.WHOLE;
        if (bars.isEmpty() || bars.stream().anyMatch(bar -> !stage.timeline().has(bar))) {
            return Optional.empty();
        }
        boolean verb = said.hasAny(Tie.IT, Tie.START, Tie.END) && !isAtEnd(said.units());
        if (!said.scope().isSaid() && said.scope().time().isEmpty() && !verb) {
            return unplaced(items, last, said);
        }
        var findings = (whole ? List.of(bars.get(last ? bars.size() - 1 : 0)) : bars)
                .stream()
                        .map(bar -> edge(
                                items,
                                last,
                                stage.stretches(
                                        List.of(bar),
                                        said.scope().time(),
                                        said.memory().beat())))
                        .toList();
        return together(findings);
    }

    /** "At the end": of the bar in hand, or of the line. */
    private static boolean isAtEnd(List<Constituent> units) {
        int end = units.indexOf(new Constituent.Small(Tie.END));
        return end > 0 && PlacedClause.is(units.get(end - 1), Tie.AT);
    }

    /** "The last note": of the bar in hand, or of the line. */
    private Optional<Judged> unplaced(List<Item> items, boolean last, PlacedClause said) {
        var all = stage.allBars();
        var line = edge(items, last, List.of(stage.timeline().whole(all.get(last ? all.size() - 1 : 0))));
        var bar = said.memory()
                .bar()
                .map(number -> edge(items, last, List.of(stage.timeline().whole(number))))
                .orElse(line);
        if (bar.contradicts() != line.contradicts()) {
            return Optional.of(Judged.mixed(bar.notes()));
        }
        return Optional.of(bar);
    }

    private static Optional<Judged> together(List<Judged> findings) {
        return findings.stream()
                .filter(Judged::contradicts)
                .findFirst()
                .or(() -> findings.stream().filter(finding -> !finding.agrees()).findFirst())
                .or(() -> findings.stream().findFirst());
    }

    private Judged edge(List<Item> items, boolean last, List<Stretch> stretches) {
        if (stretches.isEmpty()) {
            return Judged.open(List.of());
        }
        var events = stage.events(stretches);
        var sounding = events.stream().filter(event -> !event.isRest()).toList();
        var candidates = List.of(cut(events, items.size(), last), cut(sounding, items.size(), last));
        for (var run : candidates) {
            if (run.size() == items.size() && Runs.find(items, run) == 0) {
                return Judged.agrees(Runs.met(items, run, stage));
            }
        }
        var met = Runs.notes(candidates.get(1));
        var edge = sounding.isEmpty() ? List.<Together>of() : cut(sounding, 1, last);
        boolean none = edge.stream().noneMatch(event -> items.stream().anyMatch(event::fits));
        if (items.size() > 1
                && !none
                && !Runs.isDenied(items, candidates.get(0))
                && !Runs.isDenied(items, candidates.get(1))) {
            return Judged.open(met);
        }
        var item = items.get(last ? items.size() - 1 : 0);
        var there = last ? new ArrayList<>(met) : met;
        if (last) {
            Collections.reverse(there);
        }
        return Judged.wrong(
                there.isEmpty() ? Wrongs.start(stretches.get(0), item, stage) : Wrongs.note(there.get(0), item, stage),
                met);
    }

    private static List<Together> cut(List<Together> events, int many, boolean last) {
        int size = Math.min(many, events.size());
        return last ? events.subList(events.size() - size, events.size()) : events.subList(0, size);
    }
}
