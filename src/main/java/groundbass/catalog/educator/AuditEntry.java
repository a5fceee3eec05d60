package groundbass.catalog.educator;

import java.time.Instant;
import java.util.Objects;
import java.util.Optional;

/**
 * That somebody changed something.
 *
 * @param who    an educator's id, or a word for the program's own work ("calendar", "import") or for
 *               somebody without a desk ("a student", "a stranger", "the operator")
 * @param what   an {@link AuditWord} as it is stored, perhaps one that only a newer program knows
 * @param detail which one, and what is good to know; no secret and no address
 * @param program by which program of theirs an educator did it; empty where no program did
 * @param request of which request it comes, by the id that its lines in the log carry; empty where no request did it
 */
public record AuditEntry(
        Instant at, String who, String what, String detail, Optional<String> program, Optional<String> request) {
    public AuditEntry {
        Objects.requireNonNull(at);
        Objects.requireNonNull(who);
        Objects.requireNonNull(what);
        Objects.requireNonNull(detail);
        Objects.requireNonNull(program);
        Objects.requireNonNull(request);
    }
}
