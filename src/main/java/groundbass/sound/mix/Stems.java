package groundbass.sound.mix;

import groundbass.groove.Band;
import groundbass.groove.BassTone;
import groundbass.groove.ChordTone;
import groundbass.groove.Instruments;
import groundbass.groove.VoicedChord;
import groundbass.performance.Performance;
import groundbass.signal.SampleRate;
import groundbass.sound.drum.ClickPart;
import groundbass.sound.drum.DrumPart;
import groundbass.sound.keys.ChordPart;
import groundbass.sound.string.Cabinet;
import groundbass.sound.string.GuitarPart;
import groundbass.sound.string.StringBank;
import groundbass.sound.unit.Unit;
import java.util.List;

/** Makes the unit that plays one stem of an excerpt. */
public final class Stems {
    private Stems() {}

    static Unit of(Stem stem, SampleRate rate, Excerpt excerpt, Instruments instruments) {
        return switch (stem) {
            case BASS -> bass(rate, excerpt, instruments.bass());
            case DRUMS -> DrumPart.of(rate, excerpt.hits(), excerpt.closes());
            case CHORDS -> chords(rate, excerpt.chords(), instruments.chords());
            case CLICK -> ClickPart.of(rate, excerpt.clicks());
        };
    }

    private static Unit bass(SampleRate rate, Excerpt excerpt, BassTone tone) {
        var strings = StringBank.of(rate, excerpt.tuning(), excerpt.notes());
        return switch (tone) {
            case AMPLIFIER -> new Cabinet(rate, strings);
            case DIRECT -> strings;
        };
    }

    private static Unit chords(SampleRate rate, List<VoicedChord> chords, ChordTone tone) {
        return switch (tone) {
            case KEYS -> ChordPart.of(rate, chords);
            case GUITAR -> GuitarPart.of(rate, chords);
        };
    }

    /** The bass of a whole performance in one, straight from the strings. */
    public static Unit bass(SampleRate rate, Performance performance) {
        return bass(rate, Excerpts.ofWhole(performance, Band.of(performance)), BassTone.DIRECT);
    }
}
