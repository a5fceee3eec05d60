package groundbass.fingering;

import java.util.List;

/**
 * What sounds together from one moment on: what begins here and what is held.
 *
 * @param start, end in seconds; the end is that of the shortest note
 */
public record SoundingMoment(double start, double end, List<NoteConstraint> notes) {
    public SoundingMoment {
        notes = List.copyOf(notes);
        if (!(start <= end)) {
            throw new IllegalArgumentException("time runs forward: " + start + " to " + end);
        }
    }

    public static SoundingMoment of(double start, double end, NoteConstraint... notes) {
        return new SoundingMoment(start, end, List.of(notes));
    }
}
