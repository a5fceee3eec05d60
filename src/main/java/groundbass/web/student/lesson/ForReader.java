package groundbass.web.student.lesson;

import groundbass.publishing.ReleaseChanges;
import groundbass.text.Message;
import java.util.List;
import java.util.Optional;

/**
 * What a lesson's page says to one person alone.
 *
 * @param wanted the name of the file for which they have just signed in; empty for none
 * @param older that they took an earlier release
 * @param differences in what that one differs
 */
public record ForReader(String wanted, Optional<ReleaseChanges.Older> older, List<Message> differences) {
    /** For everybody. */
    public static final ForReader ANYBODY = new ForReader("", Optional.empty(), List.of());
}
