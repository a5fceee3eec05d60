package groundbass.sound.mix;

import groundbass.groove.Band;
import groundbass.performance.Performance;
import groundbass.signal.SampleRate;
import groundbass.sound.drum.ClickPart;
import groundbass.sound.drum.DrumPart;
import groundbass.sound.keys.ChordPart;
import groundbass.sound.string.StringBank;
import groundbass.sound.unit.Unit;

/** Makes the unit that plays one stem of an excerpt. */
public final class Stems {
    private Stems() {}

    static Unit of(Stem stem, SampleRate rate, Excerpt excerpt) {
        return switch (stem) {
            case BASS -> StringBank.of(rate, excerpt.tuning(), excerpt.notes());
            case DRUMS -> DrumPart.of(rate, excerpt.hits(), excerpt.closes());
            case CHORDS -> ChordPart.of(rate, excerpt.chords());
            case CLICK -> ClickPart.of(rate, excerpt.clicks());
        };
    }

    /** The bass of a whole performance in one. */
    public static Unit bass(SampleRate rate, Performance performance) {
        return of(Stem.BASS, rate, Excerpts.ofWhole(performance, Band.of(performance)));
    }
}
