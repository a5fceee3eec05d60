package groundbass.sound.mix;

import groundbass.groove.Click;
import groundbass.groove.DrumHit;
import groundbass.groove.VoicedChord;
import groundbass.performance.TimedNote;
import groundbass.score.Tuning;
import java.util.List;

/**
 * What begins in one bar of a performance, or in its count-in, in seconds from the excerpt's own start. A note that is
 * hammered, pulled or slid to belongs where its string was struck, so that an excerpt sounds by itself; what sounds on
 * past the bar's end belongs to it.
 *
 * @param lead how many samples the excerpt starts before its bar: a grace note's
 * @param closes when the hi-hat is next struck after this bar; far away for never
 */
record Excerpt(
        Tuning tuning,
        int lead,
        List<TimedNote> notes,
        List<DrumHit> hits,
        double closes,
        List<VoicedChord> chords,
        List<Click> clicks) {
    Excerpt {
        notes = List.copyOf(notes);
        hits = List.copyOf(hits);
        chords = List.copyOf(chords);
        clicks = List.copyOf(clicks);
    }

    /** When the last of it ends or is let go of; it rings on from there. */
    double end(Stem stem) {
        return switch (stem) {
            case BASS ->
                notes.stream().mapToDouble(note -> note.when().end()).max().orElse(0);
            case DRUMS -> hits.stream().mapToDouble(DrumHit::seconds).max().orElse(0);
            case CHORDS ->
                chords.stream().mapToDouble(chord -> chord.when().end()).max().orElse(0);
            case CLICK -> clicks.stream().mapToDouble(Click::seconds).max().orElse(0);
        };
    }

    boolean isSilent(Stem stem) {
        return switch (stem) {
            case BASS -> notes.isEmpty();
            case DRUMS -> hits.isEmpty();
            case CHORDS -> chords.isEmpty();
            case CLICK -> clicks.isEmpty();
        };
    }
}
