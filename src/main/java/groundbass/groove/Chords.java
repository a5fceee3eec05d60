package groundbass.groove;

import groundbass.performance.Performance;
import groundbass.performance.TimedChord;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Plays the chord symbols of a performance, each held until the next or the bar line. */
public final class Chords {
    /** Softer than the line (common practice, no source). */
    private static final int VELOCITY = 64;

    private Chords() {}

    public static List<VoicedChord> of(Performance performance) {
        var voiced = new ArrayList<VoicedChord>();
        Optional<Voicing> before = Optional.empty();
        for (TimedChord chord : performance.chords()) {
            var voicing = Voicing.after(before, chord.chord());
            if (!voicing.midi().isEmpty()) {
                voiced.add(new VoicedChord(voicing, chord.when(), VELOCITY));
                before = Optional.of(voicing);
            }
        }
        return List.copyOf(voiced);
    }
}
