package groundbass.writing;

import java.util.List;

/**
 * Elements joined by beams.
 *
 * @param first the index of the first element in its voice
 * @param parts for each element in turn, what each beam level does there, the level nearest the stem's end first;
 *     empty at a rest under the beam
 */
public record BeamGroup(int first, List<List<Part>> parts) {
    /** What one level of beam does at one stem; the values of MusicXML's beam element. */
    public enum Part {
        BEGIN,
        CONTINUE,
        END,
        FORWARD_HOOK,
        BACKWARD_HOOK
    }

    public BeamGroup {
        parts = parts.stream().map(List::copyOf).toList();
        if (parts.size() < 2) {
            throw new IllegalArgumentException("a beam joins at least two elements");
        }
    }

    /** The index of the last element in its voice. */
    public int last() {
        return first + parts.size() - 1;
    }
}
