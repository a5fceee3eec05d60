package groundbass.web.shell;

import groundbass.effort.Busy;
import groundbass.store.RequestId;
import groundbass.text.Message;
import groundbass.web.answer.CutConnection;
import groundbass.web.answer.Vary;
import groundbass.web.shell.limit.WaitResponse;
import groundbass.web.shell.log.AskedFor;
import groundbass.web.shell.log.FaultLog;
import groundbass.web.shell.log.RefusalLog;
import groundbass.web.view.ErrorView;
import groundbass.web.view.WaitView;
import io.javalin.config.RoutesConfig;
import io.javalin.http.Context;
import io.javalin.http.HttpResponseException;
import io.javalin.http.HttpStatus;
import io.javalin.http.MethodNotAllowedResponse;
import io.javalin.http.UnauthorizedResponse;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/**
 * Answers for whatever goes wrong: a page for people, a problem document (RFC 9457) for programs. A fault of ours is
 * logged and shown under the id of its request; what went wrong inside stays in the log.
 */
public final class Errors {
    private static final Logger log = LoggerFactory.getLogger(Errors.class);

    private static final List<String> OF_A_FILE =
            List.of("Accept-Ranges", "Content-Disposition", "Content-Length", "Content-Range", "ETag");

    private static final Set<Integer> REFUSED = Set.of(
            HttpStatus.UNAUTHORIZED.getCode(),
            HttpStatus.FORBIDDEN.getCode(),
            HostNames.MISDIRECTED,
            HttpStatus.TOO_MANY_REQUESTS.getCode());

    private final Pages pages;
    private final FaultLog faults = new FaultLog();
    private final RefusalLog refusals = new RefusalLog();

    public Errors(Pages pages) {
        this.pages = pages;
    }

    public void addTo(RoutesConfig routes) {
        routes.exception(HttpResponseException.class, (e, ctx) -> known(ctx, e));
        routes.exception(Busy.class, (e, ctx) -> wait(ctx, WaitResponse.busy(e.howLong())));
        routes.exception(Exception.class, (e, ctx) -> unknown(ctx, e));
    }

    private void known(Context ctx, HttpResponseException e) {
        if (isRefused(ctx, e.getStatus())) {
            refusals.write(ctx, e.getStatus(), AccessFilter.who(ctx), String.valueOf(e.getMessage()));
        }
        if (e instanceof WaitResponse refused) {
            wait(ctx, refused);
            return;
        }
        if (e instanceof MethodNotAllowedResponse) {
            // Javalin tells which methods the address has; RFC 9110 section 15.5.6 wants them in Allow
            ctx.header("Allow", String.join(", ", e.getDetails().values()));
        }
        if (e instanceof UnauthorizedResponse) {
            // RFC 9110 section 15.5.2 wants a challenge; browsers ask nobody for a scheme they do not know
            ctx.header("WWW-Authenticate", "Session");
        }
        if (e instanceof NotYoursResponse refused) {
            answer(ctx, ErrorView.told(refused.getStatus(), refused.key()));
            return;
        }
        answer(ctx, e.getStatus(), Optional.empty());
    }

    /** Whether somebody wanted what is not theirs; what is not there may be somebody else's. */
    private static boolean isRefused(Context ctx, int status) {
        return REFUSED.contains(status) || status == HttpStatus.NOT_FOUND.getCode() && AccessFilter.isGuarded(ctx);
    }

    /** Names the wait; a page keeps what was typed and asks again by itself. */
    private void wait(Context ctx, WaitResponse refused) {
        if (!begin(ctx)) {
            return;
        }
        ctx.status(refused.getStatus()).header("Retry-After", String.valueOf(refused.seconds()));
        Vary.on(ctx, "Accept");
        if (Accept.wantsPage(ctx)) {
            pages.show(ctx, "general/wait", Repeat.of(ctx, refused.getStatus(), refused.seconds()));
        } else {
            problem(ctx, ErrorView.of(refused.getStatus(), Optional.empty()), WaitView.words(refused.seconds()));
        }
    }

    private void unknown(Context ctx, Exception e) {
        var cause = BadRequests.status(e);
        var outage = Outages.seconds(e);
        if (cause.isPresent()) {
            answer(ctx, cause.get(), Optional.empty());
        } else if (outage.isPresent()) {
            log.error("not ready for {} {}", ctx.method(), AskedFor.path(ctx), e);
            ctx.header("Retry-After", outage.get().toString());
            answer(ctx, HttpStatus.SERVICE_UNAVAILABLE.getCode(), Optional.empty());
        } else {
            fault(ctx, e);
        }
    }

    private void fault(Context ctx, Exception e) {
        String id = RequestId.ofFault();
        faults.write(id, ctx, e);
        answer(ctx, HttpStatus.INTERNAL_SERVER_ERROR.getCode(), Optional.of(id));
    }

    private void answer(Context ctx, int status, Optional<String> faultId) {
        answer(ctx, ErrorView.of(status, faultId));
    }

    private void answer(Context ctx, ErrorView view) {
        if (!begin(ctx)) {
            return;
        }
        ctx.status(view.status());
        Vary.on(ctx, "Accept");
        try {
            show(ctx, view);
        } catch (RuntimeException e) {
            bare(ctx, view, e);
        }
    }

    private void show(Context ctx, ErrorView view) {
        if (Accept.wantsPage(ctx)) {
            pages.show(ctx, "general/error", view);
        } else {
            problem(ctx, view);
        }
    }

    /**
     * Takes back what was prepared of another answer. Where that is on its way already, only its connection can be ended, or
     * its reader would take it for whole. @return whether something can be said
     */
    private static boolean begin(Context ctx) {
        if (ctx.res().isCommitted()) {
            CutConnection.of(ctx);
            return false;
        }
        ctx.res().resetBuffer();
        OF_A_FILE.forEach(name -> ctx.res().setHeader(name, null));
        return true;
    }

    /** What is left to say where even the page about the error cannot be made. */
    private void bare(Context ctx, ErrorView view, RuntimeException e) {
        String id = view.faultId().orElseGet(RequestId::ofFault);
        faults.write(id, ctx, e);
        ctx.header("Cache-Control", "no-store").contentType("text/plain; charset=utf-8");
        ctx.result(view.status() + " " + id + "\n");
    }

    /** @param more sentences that follow what is always said */
    private void problem(Context ctx, ErrorView view, Message... more) {
        var reader = pages.reader(ctx);
        var said = Stream.concat(Stream.of(view.detail()), Stream.of(more)).map(reader::say);
        Map<String, Object> fault = view.faultId()
                .<Map<String, Object>>map(id -> Map.of("instance", "urn:groundbass:fault:" + id))
                .orElse(Map.of());
        new ProblemDocument(view.status(), reader.say(view.title()), said.collect(Collectors.joining(" ")), fault)
                .send(ctx);
    }
}
