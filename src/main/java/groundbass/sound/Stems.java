package groundbass.sound;

import groundbass.groove.Click;
import groundbass.groove.DrumHit;
import groundbass.groove.VoicedChord;
import groundbass.performance.Performance;
import java.util.List;

/** Makes the unit that plays one stem. */
final class Stems {
    private Stems() {}

    static Unit bass(SampleRate rate, Performance performance) {
        return Neck.of(rate, performance);
    }

    static Unit drums(SampleRate rate, List<DrumHit> hits) {
        return DrumPart.of(rate, hits);
    }

    static Unit chords(SampleRate rate, List<VoicedChord> chords) {
        return ChordPart.of(rate, chords);
    }

    static Unit clicks(SampleRate rate, List<Click> clicks) {
        return ClickPart.of(rate, clicks);
    }
}
