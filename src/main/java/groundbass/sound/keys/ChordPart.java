package groundbass.sound.keys;

import groundbass.groove.VoicedChord;
import groundbass.signal.SampleRate;
import groundbass.sound.unit.Unit;
import groundbass.theory.Pitch;
import java.util.List;

/** Plays the chords of a band. */
public final class ChordPart {
    private static final double TONE = 0.11;
    private static final double NORMAL_VELOCITY = 64;

    private ChordPart() {}

    public static Unit of(SampleRate rate, List<VoicedChord> chords) {
        return new Tones(
                chords.stream().flatMap(chord -> tones(rate, chord).stream()).toList());
    }

    private static List<Tones.Tone> tones(SampleRate rate, VoicedChord chord) {
        long at = rate.at(chord.when().start());
        long length = Math.max(1, rate.at(chord.when().end()) - at);
        double level = TONE * chord.velocity() / NORMAL_VELOCITY;
        return chord.voicing().midi().stream()
                .map(key -> new Tones.Tone(at, new SoftTone(rate, Pitch.hertz((double) key), length, level)))
                .toList();
    }
}
