package groundbass.groove;

import groundbass.performance.Performance;
import java.util.List;

/** Everything that plays along with a performance. */
public record Band(Groove groove, List<DrumHit> drums, List<VoicedChord> chords, List<Click> clicks) {
    public Band {
        drums = List.copyOf(drums);
        chords = List.copyOf(chords);
        clicks = List.copyOf(clicks);
    }

    public static Band of(Performance performance, Groove groove) {
        return new Band(
                groove, Drums.of(performance, groove), ChordPlayer.of(performance, groove), Clicks.of(performance));
    }

    /** With the library's groove that suits the line. */
    public static Band of(Performance performance) {
        return of(performance, GrooveLibrary.suited(performance.line()));
    }
}
