package groundbass.catalog.educator;

import java.util.Objects;
import java.util.Optional;

/**
 * What a program was answered, as far as it is given again where the same is asked again.
 *
 * @param type media type of the body
 * @param location where what was made stands
 */
public record ProgramAnswer(int status, String type, Optional<String> location, String body) {
    public ProgramAnswer {
        Objects.requireNonNull(type);
        Objects.requireNonNull(location);
        Objects.requireNonNull(body);
    }
}
