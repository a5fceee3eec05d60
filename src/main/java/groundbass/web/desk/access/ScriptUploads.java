package groundbass.web.desk.access;

import groundbass.catalog.educator.EducatorId;
import groundbass.form.Outcome;
import groundbass.web.shell.ProblemDocument;
import groundbass.web.shell.limit.Limit;
import groundbass.web.shell.limit.RateLimits;
import groundbass.web.view.FieldProblems;
import io.javalin.http.Context;
import io.javalin.http.HttpStatus;
import java.util.Map;
import java.util.stream.Collectors;

/** What pages have in common that take a file from an educator, as a script's bare bytes or as a part of a form. */
public final class ScriptUploads {
    private final DeskContext desk;
    private final RateLimits limits;

    public ScriptUploads(DeskContext desk, RateLimits limits) {
        this.desk = desk;
        this.limits = limits;
    }

    /** Who sends it; so many are taken from one educator, and all more are refused. */
    public EducatorId permitted(Context ctx) {
        var who = desk.educator(ctx);
        limits.demand(ctx, Limit.UPLOAD, "educator " + who);
        return who;
    }

    /** Tells a script why, in the reader's language. */
    public void refuse(Context ctx, HttpStatus status, Outcome<?> outcome) {
        var reader = desk.pages().reader(ctx);
        String reasons = outcome.problems().stream()
                .map(FieldProblems::message)
                .map(reader::say)
                .collect(Collectors.joining(" "));
        new ProblemDocument(status.getCode(), status.getMessage(), reasons, Map.of()).send(ctx);
    }
}
