package groundbass.script.thread;

import groundbass.script.checking.Right;
import groundbass.script.checking.Timeline.At;
import groundbass.script.grammar.Constituent;
import groundbass.script.grammar.Constituent.Tie;
import groundbass.script.thread.stage.Area;
import groundbass.script.thread.stage.Descriptions;
import groundbass.script.thread.stage.Judged;
import groundbass.script.thread.stage.PlacedClause;
import groundbass.script.thread.stage.Stage;
import groundbass.theory.NoteName;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Contradicts how far two notes are said to be apart, among words that were not understood. */
final class Distances implements Reader {
    private static final int OCTAVE = 12;

    private final Stage stage;

    Distances(Stage stage) {
        this.stage = stage;
    }

    @Override
    public Optional<Judged> read(PlacedClause said) {
        if (said.hasAny(Tie.MAYBE, Tie.NOT, Tie.NO)) {
            return Optional.empty();
        }
        var interval = said.only(Constituent.Interval.class);
        if (interval.isPresent()) {
            var ends = ends(said.units());
            return ends.size() == 2
                    ? Optional.of(IntervalReader.named(ends.get(0), ends.get(1), interval.get(), said))
                            .filter(Judged::contradicts)
                            .map(finding -> finding.at(interval.get()))
                    : Optional.empty();
        }
        var ends = ends(said.units());
        boolean other = said.has(Constituent.Octaves.class)
                && said.has(Tie.TO)
                && ends.size() == 2
                && ends.get(0).pitchClass() != ends.get(1).pitchClass()
                && said.all(Constituent.Place.class).isEmpty();
        if (other) { // "B to A, an octave"
            int up = Math.floorMod(ends.get(1).pitchClass() - ends.get(0).pitchClass(), OCTAVE);
            return Optional.of(Judged.wrong(new Right.StepThere(up), List.of()));
        }
        boolean octaves = said.has(Constituent.Octaves.class) && said.has(Tie.APART);
        return octaves ? octave(said) : Optional.empty();
    }

    /** The notes that are named, an open string by its name. */
    private static List<NoteName> ends(List<Constituent> units) {
        var names = new ArrayList<NoteName>();
        for (var unit : units) {
            if (unit instanceof Constituent.Name name) {
                names.add(name.name());
            } else if (unit instanceof Constituent.Place place && place.fret().orElse(-1) == 0) {
                place.string().ifPresent(names::add);
            }
        }
        return names;
    }

    /** "Those two Es are an octave apart": two of that name have to be. */
    private Optional<Judged> octave(PlacedClause said) {
        var told = Descriptions.of(said.units(), stage);
        var area = Area.of(said, stage);
        if (told.size() != 1 || area.isEmpty()) {
            return Optional.empty();
        }
        var notes = area.get().notes().stream()
                .filter(told.get(0)::fits)
                .filter(at -> stage.midi(at).isPresent())
                .toList();
        int many = said.all(Constituent.Octaves.class).get(0).many();
        boolean some =
                notes.stream().anyMatch(one -> notes.stream().anyMatch(other -> up(one, other) == OCTAVE * many));
        return notes.size() < 2 || some
                ? Optional.empty()
                : Optional.of(Judged.wrong(new Right.StepThere(up(notes.get(0), notes.get(1))), notes));
    }

    private int up(At from, At to) {
        return stage.midi(to).orElseThrow() - stage.midi(from).orElseThrow();
    }
}
