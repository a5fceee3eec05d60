package groundbass.web.program;

import groundbass.form.FieldProblem;
import groundbass.text.Message;
import groundbass.web.view.ErrorView;
import io.javalin.http.HttpStatus;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Why a request of a program is not done; nothing was changed. It is answered with a problem document (RFC 9457). */
final class Refusal extends RuntimeException {
    private static final long serialVersionUID = 1L;

    private final transient HttpStatus status;
    private final transient Message title;
    private final transient Message detail;
    private final transient List<FieldProblem> problems;
    private final transient Map<String, String> headers;

    private Refusal(
            HttpStatus status,
            Message title,
            Message detail,
            List<FieldProblem> problems,
            Map<String, String> headers) {
        super(detail.key(), null, false, false); // a mistake of the caller's, which nobody traces here
        this.status = status;
        this.title = title;
        this.detail = detail;
        this.problems = problems;
        this.headers = headers;
    }

    /** @param key of the sentence that says what is wrong and what to do */
    static Refusal of(HttpStatus status, String key, Object... args) {
        return new Refusal(status, title(status), Message.of(key, args), List.of(), Map.of());
    }

    /** What was sent can be read and cannot be done: each problem as a service tells it, with the member that it is about. */
    static Refusal of(HttpStatus status, List<FieldProblem> problems) {
        return ofMembers(status, problems.stream().map(Refusal::ofMember).toList());
    }

    private static FieldProblem ofMember(FieldProblem problem) {
        String member = MemberNames.of(problem.field()).orElse("");
        return new FieldProblem(member, problem.key(), problem.args());
    }

    private static Refusal ofMembers(HttpStatus status, List<FieldProblem> problems) {
        return new Refusal(status, title(status), Message.of("program.refused.problems"), problems, Map.of());
    }

    /** One member of what was sent is wrong. */
    static Refusal member(String member, String key, Object... args) {
        return members(List.of(FieldProblem.of(member, key, args)));
    }

    /** @param problems with the members that they are about, as the interface calls them */
    static Refusal members(List<FieldProblem> problems) {
        return ofMembers(HttpStatus.UNPROCESSABLE_CONTENT, problems);
    }

    /** Who asks has no right to: 401 or 403 with what RFC 6750 section 3 wants beside it. */
    static Refusal challenge(HttpStatus status, String challenge, String key, Object... args) {
        return new Refusal(
                status,
                Message.of("program.refused." + status.getCode()),
                Message.of(key, args),
                List.of(),
                Map.of("WWW-Authenticate", challenge));
    }

    Refusal with(String header, String value) {
        return new Refusal(status, title, detail, problems, Map.of(header, value));
    }

    private static Message title(HttpStatus status) {
        return ErrorView.of(status.getCode(), Optional.empty()).title();
    }

    HttpStatus status() {
        return status;
    }

    Message title() {
        return title;
    }

    Message detail() {
        return detail;
    }

    List<FieldProblem> problems() {
        return problems;
    }

    Map<String, String> headers() {
        return headers;
    }
}
