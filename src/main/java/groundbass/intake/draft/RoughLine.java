package groundbass.intake.draft;

import groundbass.score.Bar;
import groundbass.score.Header;
import java.util.List;
import java.util.Objects;

/**
 * What a file says, before it is a line.
 *
 * @param bars without notes; what they say may be too finely divided, and their repeats may contradict one another
 * @param notes in any order; they may overlap, lie off the neck and sound past the end
 */
public record RoughLine(Header header, List<Bar> bars, List<DraftNote> notes) {
    public RoughLine {
        Objects.requireNonNull(header);
        bars = List.copyOf(bars);
        notes = List.copyOf(notes);
        if (bars.isEmpty()) {
            throw new IllegalArgumentException("a draft has a bar");
        }
    }
}
