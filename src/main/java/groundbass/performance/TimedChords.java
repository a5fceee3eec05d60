package groundbass.performance;

import groundbass.score.ChordAt;
import groundbass.score.Fraction;
import groundbass.score.Line;
import groundbass.score.Position;
import groundbass.theory.ChordSymbol;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Puts chord symbols on the timeline, swung as the line is. A bar without one keeps the chord of the bar written before it. */
final class TimedChords {
    private final Map<Integer, ChordSymbol> heldInto = new HashMap<>();
    private final TempoMap tempos;
    private final SwungTime swung;

    private TimedChords(Line line, List<TimedBar> bars, TempoMap tempos) {
        this.tempos = tempos;
        this.swung = new SwungTime(
                bars,
                bars.stream()
                        .flatMap(bar -> bar.bar().chords().stream().map(chord -> bar.moment(chord.at())))
                        .toList());
        Optional<ChordSymbol> holds = Optional.empty();
        int number = line.firstNumber();
        for (var bar : line.bars()) {
            int here = number++;
            holds.ifPresent(chord -> heldInto.put(here, chord));
            if (!bar.chords().isEmpty()) {
                holds = Optional.of(bar.chords().get(bar.chords().size() - 1).chord());
            }
        }
    }

    static List<TimedChord> of(Line line, List<TimedBar> bars, TempoMap tempos) {
        var chords = new TimedChords(line, bars, tempos);
        return bars.stream().flatMap(bar -> chords.in(bar).stream()).toList();
    }

    private List<TimedChord> in(TimedBar bar) {
        var holding = symbols(bar);
        var timed = new ArrayList<TimedChord>();
        for (int i = 0; i < holding.size(); i++) {
            var until =
                    i + 1 < holding.size() ? holding.get(i + 1).at() : bar.bar().to();
            if (holding.get(i).at().isBefore(until)) {
                timed.add(timed(bar, holding.get(i), until));
            }
        }
        return timed;
    }

    private List<ChordAt> symbols(TimedBar bar) {
        var symbols = new ArrayList<ChordAt>();
        var from = bar.bar().from();
        boolean covered =
                bar.bar().chords().stream().anyMatch(chord -> chord.at().equals(from));
        var held = Optional.ofNullable(heldInto.get(bar.number())).filter(chord -> !covered);
        held.ifPresent(chord -> symbols.add(new ChordAt(from, chord)));
        symbols.addAll(bar.bar().chords());
        return symbols;
    }

    private TimedChord timed(TimedBar bar, ChordAt chord, Fraction until) {
        var origin = new Origin(new Position(bar.number(), chord.at()), bar.pass(), bar.round());
        var at = swung.of(bar.moment(chord.at()));
        return new TimedChord(chord.chord(), origin, When.of(at, swung.of(bar.moment(until)), tempos));
    }
}
