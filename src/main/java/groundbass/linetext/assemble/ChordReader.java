package groundbass.linetext.assemble;

import groundbass.linetext.problem.BarProblems;
import groundbass.linetext.problem.Problems;
import groundbass.linetext.source.Moment;
import groundbass.linetext.typed.RawBar.TypedChord;
import groundbass.score.ChordAt;
import groundbass.score.Fraction;
import groundbass.score.Grid;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/** Gives the chords of one bar their times: the first begins with the bar unless it says otherwise. */
final class ChordReader {
    private final BarExtent extent;
    private final Grid grid;
    private final Problems problems;
    private final Set<Fraction> taken = new HashSet<>();

    ChordReader(BarExtent extent, Grid grid, Problems problems) {
        this.extent = extent;
        this.grid = grid;
        this.problems = problems;
    }

    /** Chords that were typed stand for all that were copied. */
    void read(Optional<List<TypedChord>> typed, List<ChordAt> copied, List<ChordAt> chords) {
        typed.ifPresentOrElse(list -> list.forEach(chord -> place(chord, chords)), () -> chords.addAll(copied));
    }

    private void place(TypedChord typed, List<ChordAt> chords) {
        var at = typed.at().map(moment -> moment.offset(extent.meter())).orElse(extent.from());
        String when = Moment.at(at, extent.meter()).toString();
        if (!extent.contains(at)) {
            problems.add(BarProblems.chordOutside(typed.span(), when, extent.number()));
        } else if (!grid.admit(at)) {
            problems.add(BarProblems.tooFine(typed.span(), extent.number()));
        } else if (!taken.add(at)) {
            problems.add(BarProblems.chordsTogether(typed.span(), when));
        } else {
            chords.add(new ChordAt(at, typed.chord()));
        }
    }
}
