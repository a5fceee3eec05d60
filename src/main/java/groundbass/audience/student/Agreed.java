package groundbass.audience.student;

import groundbass.catalog.settings.AgeSaid;
import java.util.Objects;
import java.util.Optional;

/**
 * What the holder of an address agrees to when they sign in.
 *
 * @param wording version of the notice that stood beside the button
 * @param age     from which on nobody needs a guardian's consent, where the site asks
 * @param said    what they answered to that, if they did
 */
public record Agreed(String wording, Optional<Integer> age, Optional<AgeSaid> said) {
    public Agreed {
        Objects.requireNonNull(wording);
        Objects.requireNonNull(age);
        Objects.requireNonNull(said);
    }

    /** Where nobody's age is asked. */
    static Agreed to(String wording) {
        return new Agreed(wording, Optional.empty(), Optional.empty());
    }

    Optional<String> ageWording() {
        return age.flatMap(years -> said.map(one -> one.wording(years)));
    }
}
