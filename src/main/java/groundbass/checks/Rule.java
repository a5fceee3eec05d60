package groundbass.checks;

import java.util.stream.Stream;

/** One thing that can be remarked on. */
@FunctionalInterface
interface Rule {
    Stream<Finding> findings(Evidence evidence);
}
