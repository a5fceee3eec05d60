package groundbass.script.thread;

import groundbass.script.checking.Right;
import groundbass.script.checking.Timeline.At;
import groundbass.script.grammar.Constituent;
import groundbass.script.grammar.Constituent.Tie;
import groundbass.script.thread.stage.Finding;
import groundbass.script.thread.stage.Said;
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
    public Optional<Finding> read(Said said) {
        boolean up = said.hasAny(Tie.UP, Tie.CLIMB);
        boolean down = said.has(Tie.DOWN) || said.has(Tie.FALL) && !said.has(Tie.ON);
        if (up == down || said.hasAny(Tie.NOT, Tie.NO)) {
            return Optional.empty();
        }
        var rest = new ArrayList<Constituent>();
        for (var unit : said.units()) {
            boolean way = Said.is(unit, Tie.UP)
                    || Said.is(unit, Tie.DOWN)
                    || Said.is(unit, Tie.CLIMB)
                    || Said.is(unit, Tie.FALL)
                    || Said.is(unit, Tie.TO)
                    || Said.is(unit, Tie.FROM);
            boolean dummy = Said.is(unit, Tie.IT)
                    || Said.is(unit, Tie.THEY)
                    || Said.is(unit, Tie.SO)
                    || Said.is(unit, Tie.PLAY);
            if (!way && !dummy) {
                rest.add(unit);
            }
        }
        boolean content = rest.stream().anyMatch(unit -> !(unit instanceof Constituent.Small));
        if (!content) {
            return said.has(Tie.END) && onlyTies(rest) ? atEnd(up, said) : Optional.empty();
        }
        var found = notes.read(said.with(rest));
        return found.map(finding -> finding.agrees() ? judged(finding, up) : finding);
    }

    private static boolean onlyTies(List<Constituent> rest) {
        return rest.stream()
                .allMatch(unit -> Said.is(unit, Tie.END)
                        || Said.is(unit, Tie.AT)
                        || Said.is(unit, Tie.SO)
                        || Said.is(unit, Tie.OF));
    }

    private Optional<Finding> atEnd(boolean up, Said said) {
        if (said.bars().size() != 1 || !stage.timeline().has(said.bars().get(0))) {
            return Optional.empty();
        }
        var all = stage.notes(said.bars().get(0));
        return all.size() < 2 ? Optional.empty() : Optional.of(way(all.subList(all.size() - 2, all.size()), up));
    }

    private Finding judged(Finding finding, boolean up) {
        var notes = finding.notes();
        if (notes.size() > 1) {
            return way(notes, up);
        }
        var all = stage.everyNote().stream()
                .filter(note -> stage.midi(note).isPresent())
                .toList();
        int at = notes.isEmpty() ? -1 : all.indexOf(notes.get(0));
        return at < 1
                ? Finding.open(notes)
                : new Finding(way(List.of(all.get(at - 1), all.get(at)), up).verdict(), notes);
    }

    private Finding way(List<At> notes, boolean up) {
        var from = stage.midi(notes.get(0));
        var to = stage.midi(notes.get(notes.size() - 1));
        if (from.isEmpty() || to.isEmpty()) {
            return Finding.open(notes);
        }
        int step = to.get() - from.get();
        return Finding.of(up ? step > 0 : step < 0, new Right.StepThere(step), notes);
    }
}
