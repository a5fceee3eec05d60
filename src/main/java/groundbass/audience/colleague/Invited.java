package groundbass.audience.colleague;

import groundbass.audience.student.SecretToken;
import java.util.Objects;

/** A new invitation and the token of its link, which is known this once. */
public record Invited(Invitation invitation, SecretToken token) {
    public Invited {
        Objects.requireNonNull(invitation);
        Objects.requireNonNull(token);
    }
}
