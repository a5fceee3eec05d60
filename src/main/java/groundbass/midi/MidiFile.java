package groundbass.midi;

import groundbass.groove.Band;
import groundbass.performance.Performance;
import java.util.ArrayList;
import java.util.List;

/**
 * A format-1 Standard MIDI File (MMA RP-001): a conductor track, then Bass, Drums, Chords and Click. The count-in comes
 * first. The same performance and band give the same bytes.
 */
public final class MidiFile {
    private MidiFile() {}

    public static byte[] of(Performance performance, Band band) {
        var tracks = new ArrayList<>(List.of(Conductor.of(performance), BassTrack.of(performance)));
        tracks.addAll(BandTracks.of(band));
        return FileChunk.file(tracks, Ticks.of(performance.end()));
    }

    /** With the groove that suits the line. */
    public static byte[] of(Performance performance) {
        return of(performance, Band.of(performance));
    }
}
