package groundbass.groove;

import groundbass.remark.Remark;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

/** What came of reading a groove's text: the groove where there is no problem, and every problem where there are any. */
public record GrooveReading(Optional<Groove> groove, List<Remark> problems) {
    public GrooveReading {
        Objects.requireNonNull(groove);
        problems = List.copyOf(problems);
        if (groove.isPresent() != problems.isEmpty()) {
            throw new IllegalArgumentException("either a groove or problems");
        }
    }
}
