package groundbass.fingering;

import java.util.List;

/**
 * What the fretting hand does at one moment.
 *
 * @param position the fret at which the index finger stands or would stand, as players name positions
 * @param notes in the order of the moment's notes
 */
public record Grip(int position, List<Fingered> notes) {
    public Grip {
        notes = List.copyOf(notes);
    }
}
