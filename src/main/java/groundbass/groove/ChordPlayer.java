package groundbass.groove;

import groundbass.performance.Origin;
import groundbass.performance.Performance;
import groundbass.performance.TimedChord;
import groundbass.theory.ChordSymbol;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** Plays the chord symbols of a performance, each held until the next or the bar line; every round alike. */
final class ChordPlayer {
    /** Softer than the line (common practice, no source). */
    private static final int VELOCITY = 64;

    private ChordPlayer() {}

    public static List<VoicedChord> of(Performance performance) {
        var voicings = voicings(performance.chords());
        return performance.chords().stream()
                .map(chord -> new VoicedChord(voicings.get(once(chord)), chord.when(), VELOCITY))
                .filter(chord -> !chord.voicing().midi().isEmpty())
                .toList();
    }

    /** By the first playing of each chord on each pass. */
    private static Map<Origin, Voicing> voicings(List<TimedChord> chords) {
        var first = new HashMap<Origin, TimedChord>();
        var progression = chords.stream()
                .filter(chord -> first.putIfAbsent(once(chord), chord) == null)
                .toList();
        List<ChordSymbol> symbols = progression.stream().map(TimedChord::chord).toList();
        var led = VoiceLeading.of(symbols);
        var voicings = new HashMap<Origin, Voicing>();
        for (int i = 0; i < progression.size(); i++) {
            voicings.put(once(progression.get(i)), led.get(i));
        }
        return voicings;
    }

    private static Origin once(TimedChord chord) {
        return new Origin(chord.origin().written(), chord.origin().pass(), 1);
    }
}
