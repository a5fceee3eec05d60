package groundbass.web.shell;

import io.javalin.http.Context;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Objects;

/**
 * What went wrong, for a program (RFC 9457): the status says what kind of problem it is.
 *
 * @param more members beside those that every document has (section 3.2), in their order
 */
public record ProblemDocument(int status, String title, String detail, Map<String, Object> more) {
    public static final String MEDIA_TYPE = "application/problem+json";

    public ProblemDocument {
        Objects.requireNonNull(title);
        Objects.requireNonNull(detail);
        Objects.requireNonNull(more);
    }

    /** All of its members, in their order. */
    public Map<String, Object> members() {
        Map<String, Object> members = new LinkedHashMap<>();
        members.put("type", "about:blank");
        members.put("title", title);
        members.put("status", status);
        members.put("detail", detail);
        members.putAll(more);
        return members;
    }

    /** Answers with it. */
    public void send(Context ctx) {
        ctx.status(status).header("Cache-Control", "no-store");
        ctx.json(members()).contentType(MEDIA_TYPE);
    }
}
