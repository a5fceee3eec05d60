package groundbass.intake.smf;

import java.util.List;
import java.util.Objects;

/**
 * What a Standard MIDI File says, as far as it concerns a line (MMA RP-001).
 *
 * @param format 0 or 1
 * @param perQuarter ticks of a quarter
 */
record Smf(int format, int perQuarter, List<Track> tracks) {
    Smf {
        tracks = List.copyOf(tracks);
    }

    /**
     * One track.
     *
     * @param name empty where it has none
     * @param instants notes that are let go when they are struck
     */
    record Track(
            String name,
            String rights,
            List<Note> notes,
            List<Note> instants,
            List<Program> programs,
            List<Tempo> tempos,
            List<Signature> signatures,
            List<Key> keys,
            List<Marker> markers) {
        Track {
            Objects.requireNonNull(name);
            Objects.requireNonNull(rights);
            notes = List.copyOf(notes);
            instants = List.copyOf(instants);
            programs = List.copyOf(programs);
            tempos = List.copyOf(tempos);
            signatures = List.copyOf(signatures);
            keys = List.copyOf(keys);
            markers = List.copyOf(markers);
        }
    }

    /** A key from when it is struck to when it is let go, in ticks. */
    record Note(long on, long off, int channel, int key) {}

    /** @param number from 0 */
    record Program(int channel, int number) {}

    /** Microseconds of a quarter; none is no tempo. */
    record Tempo(long tick, int micros) {}

    /** As a file has it, be it a metre or none. */
    record Signature(long tick, int counts, int unit) {}

    /** @param fifths sharps, or flats where negative; as a file has them */
    record Key(long tick, int fifths, boolean minor) {}

    record Marker(long tick, String text) {}
}
