package groundbass.audience.student;

import groundbass.audience.student.SignIns.Agreed;
import java.util.Optional;

/** What readers of tests agree to. */
public final class Agreements {
    private Agreements() {}

    /** Where nobody's age is asked. */
    public static Agreed to(String wording) {
        return new Agreed(wording, Optional.empty(), Optional.empty());
    }
}
