package groundbass.checks.finding;

import java.util.stream.Stream;

/** One thing that can be remarked on. */
@FunctionalInterface
public interface Rule {
    Stream<Finding> findings(Evidence evidence);
}
