package groundbass.midi;

import groundbass.groove.Band;
import groundbass.performance.Performance;
import java.util.ArrayList;
import java.util.List;

/**
 * A format-1 Standard MIDI File (MMA RP-001): a conductor track, then Bass, Drums, Chords and Click. The same performance,
 * band and opening give the same bytes.
 */
public final class MidiFile {
    private MidiFile() {}

    public static byte[] of(Performance performance, Band band, Opening opening) {
        var tracks = new ArrayList<>(List.of(Conductor.of(performance, opening), BassTrack.of(performance)));
        tracks.addAll(BandTracks.of(band, opening));
        long start = Ticks.of(opening.leftOut(performance));
        return FileChunk.file(tracks, start, Ticks.of(performance.end()));
    }

    /** With the groove that suits the line, and counted in. */
    public static byte[] of(Performance performance) {
        return of(performance, Band.of(performance), Opening.COUNT_IN);
    }
}
