package groundbass.web.program;

import groundbass.form.FieldProblem;
import groundbass.form.Outcome;
import groundbass.publishing.Seen;
import io.javalin.http.HttpStatus;
import java.util.List;
import java.util.Objects;

/** What the operations that bring a lesson out have in common: remarks that are let stand, and why it was not done. */
final class Accepting {
    private static final int MOST = 500;
    private static final String DIGEST = "[0-9a-f]{64}";

    private Accepting() {}

    /**
     * The remarks that may stand.
     *
     * @param sent digests as the preflight tells them; null for none
     */
    static List<String> digests(List<String> sent) {
        var named = Objects.requireNonNullElse(sent, List.<String>of());
        if (named.size() > MOST || !named.stream().allMatch(digest -> digest.matches(DIGEST))) {
            throw Refusal.member("accept", "program.refused.accept", MOST);
        }
        return named;
    }

    /** What came of it. Where the lesson stands otherwise by now it is a conflict (RFC 9110 section 15.5.10). */
    static <T> T done(Outcome<T> outcome) {
        return outcome.result().orElseThrow(() -> refusal(outcome.problems()));
    }

    static Refusal refusal(List<FieldProblem> problems) {
        return Refusal.of(
                Seen.isOtherwise(problems) ? HttpStatus.CONFLICT : HttpStatus.UNPROCESSABLE_CONTENT, problems);
    }
}
