package groundbass.script.thread;

import groundbass.script.checking.Right;
import groundbass.script.checking.Timeline.At;
import groundbass.script.grammar.Constituent;
import groundbass.script.grammar.Constituent.Tie;
import groundbass.script.thread.stage.Judged;
import groundbass.script.thread.stage.Part;
import groundbass.script.thread.stage.PlacedClause;
import groundbass.script.thread.stage.Stage;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Notes that go up or down. */
final class DirectionReader implements Reader {
    private final Stage stage;
    private final Reader notes;

    DirectionReader(Stage stage, Reader notes) {
        this.stage = stage;
        this.notes = notes;
    }

    @Override
    public Optional<Judged> read(PlacedClause said) {
        boolean up = said.hasAny(Tie.UP, Tie.CLIMB);
        boolean down = said.has(Tie.DOWN) || said.has(Tie.FALL) && !said.has(Tie.ON);
        if (up == down || said.hasAny(Tie.NOT, Tie.NO) || isStroke(said.units())) {
            return Optional.empty();
        }
        var rest = new ArrayList<Constituent>();
        for (var unit : said.units()) {
            boolean way = PlacedClause.is(unit, Tie.UP)
                    || PlacedClause.is(unit, Tie.DOWN)
                    || PlacedClause.is(unit, Tie.CLIMB)
                    || PlacedClause.is(unit, Tie.FALL)
                    || PlacedClause.is(unit, Tie.TO)
                    || PlacedClause.is(unit, Tie.FROM);
            boolean dummy = PlacedClause.is(unit, Tie.IT)
                    || PlacedClause.is(unit, Tie.THEY)
                    || PlacedClause.is(unit, Tie.SO)
                    || PlacedClause.is(unit, Tie.PLAY);
            if (!way && !dummy) {
                rest.add(unit);
            }
        }
        boolean content = rest.stream().anyMatch(unit -> !(unit instanceof Constituent.Small));
        if (!content) {
            return said.has(Tie.END) && onlyTies(rest) ? atEnd(up, said) : Optional.empty();
        }
        var triplet = triplet(rest, said);
        if (!triplet.isEmpty()) {
            return Optional.of(way(triplet, up));
        }
        var found = notes.read(said.with(rest));
        return found.map(finding -> finding.agrees() ? judged(finding, up, said) : finding);
    }

    /** "The triplet goes down": all of the one that the bar has; none where more is said, or that is not known. */
    private List<At> triplet(List<Constituent> rest, PlacedClause said) {
        boolean alone = rest.stream()
                .allMatch(unit -> unit instanceof Constituent.Triplet
                        || PlacedClause.is(unit, Tie.THAT)
                        || PlacedClause.is(unit, Tie.ALL));
        boolean one = alone
                && said.bars().size() == 1
                && stage.timeline().has(said.bars().get(0));
        var notes = one
                ? stage.notes(said.bars().get(0)).stream()
                        .filter(Part::isTuplet)
                        .filter(at -> stage.midi(at).isPresent())
                        .toList()
                : List.<At>of();
        return notes.size() > 3 ? List.of() : notes;
    }

    /** "Thumb back up through the string": a stroke has a way of its own. */
    private static boolean isStroke(List<Constituent> units) {
        for (int i = 0; i + 1 < units.size(); i++) {
            boolean way = PlacedClause.is(units.get(i + 1), Tie.UP) || PlacedClause.is(units.get(i + 1), Tie.DOWN);
            if (way && PlacedClause.is(units.get(i), Tie.THUMB)) {
                return true;
            }
        }
        return false;
    }

    private static boolean onlyTies(List<Constituent> rest) {
        return rest.stream()
                .allMatch(unit -> PlacedClause.is(unit, Tie.END)
                        || PlacedClause.is(unit, Tie.AT)
                        || PlacedClause.is(unit, Tie.SO)
                        || PlacedClause.is(unit, Tie.OF));
    }

    private Optional<Judged> atEnd(boolean up, PlacedClause said) {
        if (said.bars().size() != 1 || !stage.timeline().has(said.bars().get(0))) {
            return Optional.empty();
        }
        var all = stage.notes(said.bars().get(0));
        return all.size() < 2 ? Optional.empty() : Optional.of(way(all.subList(all.size() - 2, all.size()), up));
    }

    private Judged judged(Judged finding, boolean up, PlacedClause said) {
        var notes = finding.notes();
        if (notes.size() > 1) {
            return way(notes, up);
        }
        var all = stage.everyNote().stream()
                .filter(note -> stage.midi(note).isPresent())
                .toList();
        int at = notes.isEmpty() ? -1 : all.indexOf(notes.get(0));
        boolean compared = said.has(Tie.WHICH); // "which is another A, only higher": than what, was not said
        return at < 1 || compared
                ? Judged.open(notes)
                : new Judged(way(List.of(all.get(at - 1), all.get(at)), up).verdict(), notes);
    }

    private Judged way(List<At> notes, boolean up) {
        var from = stage.midi(notes.get(0));
        var to = stage.midi(notes.get(notes.size() - 1));
        if (from.isEmpty() || to.isEmpty()) {
            return Judged.open(notes);
        }
        int step = to.get() - from.get();
        return Judged.of(up ? step > 0 : step < 0, new Right.StepThere(step), notes);
    }
}
