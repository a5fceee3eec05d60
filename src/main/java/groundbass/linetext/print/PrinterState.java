package groundbass.linetext.print;

import groundbass.linetext.assemble.Copying;
import groundbass.score.Bar;
import groundbass.score.Fraction;
import groundbass.score.InForce;
import groundbass.score.Meter;
import groundbass.score.Note;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** What earlier bars leave for the next one to be printed: sounds that go on, and bars to copy. */
public final class PrinterState {
    private final List<InForce> inForce;
    private final List<Bar> bars;
    private final Map<Integer, Fraction> soundsUntil = new HashMap<>();
    private Fraction now = Fraction.ZERO;

    public PrinterState(List<Bar> bars, List<InForce> inForce) {
        this.bars = bars;
        this.inForce = inForce;
    }

    /** The sounds that go on into the bar that comes next. */
    List<SoundInBar> into(Bar bar) {
        var pieces = new ArrayList<SoundInBar>();
        soundsUntil.forEach((string, until) -> {
            if (until.isAfter(now)) {
                var end = bar.from().plus(until.minus(now));
                pieces.add(SoundInBar.carried(string, bar.from(), end.min(bar.to())));
            }
        });
        return pieces;
    }

    /** Whether some sound ends exactly where the next bar begins. */
    boolean someEndAtStart() {
        return soundsUntil.values().stream().anyMatch(now::equals);
    }

    public void pass(Bar bar) {
        for (var note : bar.notes()) {
            soundsUntil.put(note.string(), now.plus(note.end()).minus(bar.from()));
        }
        now = now.plus(bar.length());
    }

    Meter meterOf(int number) {
        return inForce.get(number - inForce.get(0).number()).meter();
    }

    Optional<Copying.Original> original(Bar copy) {
        return copy.copy()
                .map(found -> bars.get(found.bar() - inForce.get(0).number()))
                .map(bar -> new Copying.Original(
                        bar.from(),
                        bar.to(),
                        bar.notes().stream().map(note -> inside(note, bar)).toList(),
                        bar.directions(),
                        bar.chords()));
    }

    private static Note inside(Note note, Bar bar) {
        return note.withLength(note.end().min(bar.to()).minus(note.onset()));
    }
}
