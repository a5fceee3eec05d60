package groundbass.walkthrough;

import groundbass.score.Note;
import groundbass.score.Tuning;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * How far notes sound from others of the same shape.
 *
 * @param semitones upwards; negative where they sound lower; never 0, which is no other sound
 */
record SoundingInterval(int semitones) {
    private static final int OCTAVE = 12;

    /** Empty where the notes that sound are not all moved by one interval, or not at all. */
    static Optional<SoundingInterval> between(List<Note> earlier, List<Note> later, Tuning tuning) {
        var intervals = IntStream.range(0, later.size())
                .filter(i -> !later.get(i).isDead())
                .map(i -> later.get(i).midi(tuning).orElseThrow()
                        - earlier.get(i).midi(tuning).orElseThrow())
                .distinct()
                .toArray();
        return intervals.length == 1 && intervals[0] != 0
                ? Optional.of(new SoundingInterval(intervals[0]))
                : Optional.empty();
    }

    /** By how many octaves higher; 0 where the distance is no octave. */
    int octaves() {
        return semitones % OCTAVE == 0 ? semitones / OCTAVE : 0;
    }
}
