package groundbass.web.program;

import groundbass.catalog.episode.Episode;
import groundbass.form.FieldProblem;
import groundbass.form.Outcome;
import groundbass.publishing.Publisher;
import groundbass.publishing.Seen;
import io.javalin.http.HttpStatus;
import java.util.List;
import java.util.Objects;

/** What the operations that bring a lesson out have in common: remarks that are let stand, and why it was not done. */
record Accepting(Publisher publisher) {
    private static final int MOST = 500;
    private static final String DIGEST = "[0-9a-f]{64}";

    /**
     * Lets remarks stand, as a form of the desk does.
     *
     * @param digests as the preflight tells them; null for none
     */
    void accept(Call call, Episode lesson, List<String> digests) {
        var named = Objects.requireNonNullElse(digests, List.<String>of());
        if (named.size() > MOST || named.stream().anyMatch(digest -> digest == null || !digest.matches(DIGEST))) {
            throw Refusal.member("accept", "program.refused.accept", MOST);
        }
        publisher.accept(call.who(), lesson.id(), named);
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
