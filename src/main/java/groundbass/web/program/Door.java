package groundbass.web.program;

import groundbass.catalog.educator.Audit;
import groundbass.catalog.educator.ProgramScope;
import groundbass.form.FieldProblem;
import groundbass.web.program.Call.Operation;
import groundbass.web.shell.Pages;
import groundbass.web.shell.ProblemDocument;
import groundbass.web.shell.limit.Limit;
import groundbass.web.shell.limit.RateLimits;
import groundbass.web.view.FieldProblems;
import groundbass.web.view.Reader;
import io.javalin.http.Context;
import io.javalin.http.Handler;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** What every request of a program passes: who it is, what it may, how often; and how it is told that it was refused. */
final class Door {
    /** Below which all of the interface stands; the number grows when a program could misread what is answered. */
    static final String ROOT = "/api/v1";

    private final Callers callers;
    private final RateLimits limits;
    private final Audit audit;
    private final Pages pages;

    Door(Callers callers, RateLimits limits, Audit audit, Pages pages) {
        this.callers = callers;
        this.limits = limits;
        this.audit = audit;
        this.pages = pages;
    }

    /** A handler that does this for programs that may do such things. */
    Handler open(ProgramScope scope, Operation operation) {
        return ctx -> pass(ctx, Set.of(scope), operation);
    }

    /** A handler that does this for every program that was let in. */
    Handler openToAll(Operation operation) {
        return ctx -> pass(ctx, Set.of(), operation);
    }

    private void pass(Context ctx, Set<ProgramScope> scopes, Operation operation) throws Exception {
        ctx.disableCompression(); // a coded body would need a tag of its own (RFC 9110 section 8.8.3.3)
        try {
            var token = callers.token(ctx);
            limits.demand(ctx, Limit.PROGRAM, "educator " + token.educator()); // also what is refused then
            scopes.forEach(scope -> Callers.demand(token, scope));
            audit.byProgram(token.name(), () -> operation.answer(new Call(ctx, token)));
        } catch (Refusal refusal) {
            tell(ctx, refusal);
        }
    }

    /** The person who reads the sentences of an answer, if anybody does. */
    Reader reader(Call call) {
        return pages.reader(call.ctx());
    }

    private void tell(Context ctx, Refusal refusal) {
        refusal.headers().forEach(ctx::header);
        document(refusal, pages.reader(ctx)).send(ctx);
    }

    static ProblemDocument document(Refusal refusal, Reader reader) {
        var problems = refusal.problems().stream()
                .map(problem -> problem(problem, reader))
                .toList();
        return new ProblemDocument(
                refusal.status().getCode(),
                reader.say(refusal.title()),
                reader.say(refusal.detail()),
                problems.isEmpty() ? Map.of() : Map.of("problems", List.copyOf(problems)));
    }

    private static Map<String, Object> problem(FieldProblem problem, Reader reader) {
        return Members.of("detail", reader.say(FieldProblems.message(problem)))
                .and("member", Optional.of(problem.field()).filter(member -> !member.isEmpty()))
                .map();
    }
}
