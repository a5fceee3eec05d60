package groundbass.writing;

import groundbass.score.Line;
import java.util.List;

/** A line and how each of its bars is written down. */
public record WrittenLine(Line line, List<WrittenBar> bars) {
    public WrittenLine {
        bars = List.copyOf(bars);
    }
}
