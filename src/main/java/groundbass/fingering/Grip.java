package groundbass.fingering;

import groundbass.score.Place.Fretted;
import java.util.IntSummaryStatistics;
import java.util.List;

/**
 * What the fretting hand does at one moment.
 *
 * @param position the fret at which the index finger stands or would stand, as players name positions
 * @param notes in the order of the moment's notes
 * @param possible whether a hand can do it
 */
public record Grip(int position, List<Fingered> notes, boolean possible) {
    public Grip {
        notes = List.copyOf(notes);
    }

    /** The stopped frets: the lowest, the highest, and how many. */
    public IntSummaryStatistics stopped() {
        return notes.stream()
                .filter(note -> note.finger() > 0)
                .map(Fingered::place)
                .filter(Fretted.class::isInstance)
                .mapToInt(place -> ((Fretted) place).fret())
                .summaryStatistics();
    }

    /** Whether no finger stops a string, so that the hand may go where it likes. */
    public boolean isFree() {
        return notes.stream().allMatch(note -> note.finger() == 0);
    }
}
