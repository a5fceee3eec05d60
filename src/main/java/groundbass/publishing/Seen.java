package groundbass.publishing;

import groundbass.catalog.episode.EpisodeState;
import groundbass.form.FieldProblem;
import java.util.List;
import java.util.Objects;

/**
 * How a lesson stood on the page on which a button was pressed. Another window, or its hour, may have been faster: then
 * the press meant something else, and does nothing.
 *
 * @param token as the page's form sends it
 */
public record Seen(String token) {
    /** For whoever wants it done however the lesson stands. */
    public static final Seen ANYHOW = new Seen("");

    /** The field of what is wrong since something stands otherwise than was seen: where a page tells how it stands. */
    public static final String STANDING = "calendar";

    private static final String OUT = "out";
    private static final String WITHDRAWN = "withdrawn";

    public Seen {
        Objects.requireNonNull(token);
    }

    public static Seen of(EpisodeState state) {
        if (state instanceof EpisodeState.Scheduled promise) {
            return new Seen("promised " + promise.at() + " " + promise.madeAt());
        }
        if (state instanceof EpisodeState.Published out) {
            return new Seen(out.withdrawal().isPresent() ? WITHDRAWN : OUT);
        }
        return new Seen("draft");
    }

    /** Whether something is refused since the lesson stands otherwise than was seen. */
    public static boolean isOtherwise(List<FieldProblem> problems) {
        return problems.stream().anyMatch(problem -> problem.field().equals(STANDING));
    }

    /** Whether it was out, also where it was taken back since. */
    public boolean isOut() {
        return token.equals(OUT) || token.equals(WITHDRAWN);
    }

    /** Whether it still stands so. */
    public boolean holds(EpisodeState now) {
        return token.isEmpty() || equals(of(now));
    }
}
