package groundbass.web.program;

import groundbass.catalog.educator.ProgramAnswer;
import groundbass.catalog.educator.ProgramAnswers;
import groundbass.catalog.educator.Repetition;
import groundbass.effort.Busy;
import groundbass.identity.Sha256;
import groundbass.web.shell.Pages;
import groundbass.web.shell.ProblemDocument;
import groundbass.web.shell.limit.Limit;
import groundbass.web.shell.limit.RateLimits;
import io.javalin.http.Context;
import io.javalin.http.HttpResponseException;
import io.javalin.http.HttpStatus;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.Optional;
import java.util.regex.Pattern;

/**
 * Does what a POST asks for once, however often it is sent under one key (IETF draft httpapi-idempotency-key-header): the
 * same is answered as the first time, for a day; something else under a key that was used is refused.
 */
final class Once {
    private static final String HEADER = "Idempotency-Key";
    /** A string of structured fields (RFC 9651 section 3.3.3) of 100 characters at most, none of which is escaped. */
    private static final Pattern KEY = Pattern.compile("\"([\\x20\\x21\\x23-\\x5b\\x5d-\\x7e]{1,100})\"");

    private final ProgramAnswers answers;
    private final RateLimits limits;
    private final Pages pages;

    Once(ProgramAnswers answers, RateLimits limits, Pages pages) {
        this.answers = answers;
        this.limits = limits;
        this.pages = pages;
    }

    /**
     * What came of a request.
     *
     * @param location where what was made stands
     */
    record Made(HttpStatus status, String location, Map<String, Object> value) {}

    /** Does what is asked for. */
    interface Work {
        Made make() throws IOException;
    }

    /** A key of the right form, from a program that may still send something. */
    record Key(String value) {}

    /**
     * The key of a request; refuses one without a good key, or one too many. Whoever asks this before the body is read spares
     * a program sending all of it for nothing.
     */
    Key key(Call call) {
        String key = key(call.ctx());
        limits.demand(call.ctx(), Limit.PROGRAM_POST, call.token().id());
        return new Key(key);
    }

    void answer(Call call, Key key, Incoming body, Work work) throws IOException {
        var repetition = answers.begin(call.token(), key.value(), asked(call.ctx(), body));
        if (repetition instanceof Repetition.Answered again) {
            send(call.ctx(), again.answer());
        } else if (repetition instanceof Repetition.UnderWay) {
            throw Refusal.of(HttpStatus.CONFLICT, "program.refused.key.under-way")
                    .with("Retry-After", "1");
        } else if (repetition instanceof Repetition.Otherwise) {
            throw Refusal.of(HttpStatus.UNPROCESSABLE_CONTENT, "program.refused.key.other");
        } else if (repetition instanceof Repetition.First first) {
            send(call.ctx(), first(call, first, work));
        } else {
            throw Callers.notGood();
        }
    }

    /**
     * The key is let go only where it is sure that nothing was done. After a fault, or where the answer cannot be kept, it
     * stays under way until it counts as broken off: a program that repeats the request would do it twice.
     */
    private ProgramAnswer first(Call call, Repetition.First first, Work work) throws IOException {
        ProgramAnswer answer;
        try {
            answer = answer(call, work);
        } catch (Busy | HttpResponseException refused) {
            answers.forget(first);
            throw refused;
        }
        answers.keep(first, answer);
        return answer;
    }

    /** What is refused is answered like that again, too. */
    private ProgramAnswer answer(Call call, Work work) throws IOException {
        try {
            var made = work.make();
            return answer(made.status(), Answers.JSON, Optional.of(made.location()), made.value());
        } catch (Refusal refusal) {
            var document = Door.document(refusal, pages.reader(call.ctx()));
            return answer(refusal.status(), ProblemDocument.MEDIA_TYPE, Optional.empty(), document.members());
        }
    }

    private static ProgramAnswer answer(
            HttpStatus status, String type, Optional<String> location, Map<String, Object> value) {
        String body = new String(ProgramJson.write(value), StandardCharsets.UTF_8);
        return new ProgramAnswer(status.getCode(), type, location, body);
    }

    private static void send(Context ctx, ProgramAnswer answer) {
        ctx.status(answer.status()).header("Cache-Control", "no-store");
        answer.location().ifPresent(where -> ctx.header("Location", where));
        ctx.contentType(answer.type()).result(answer.body().getBytes(StandardCharsets.UTF_8));
    }

    private static String key(Context ctx) {
        String sent = ctx.header(HEADER);
        if (sent == null) {
            throw Refusal.of(HttpStatus.BAD_REQUEST, "program.refused.key.missing");
        }
        var key = KEY.matcher(sent.strip());
        if (!key.matches()) {
            throw Refusal.of(HttpStatus.BAD_REQUEST, "program.refused.key.form");
        }
        return key.group(1);
    }

    private static Sha256 asked(Context ctx, Incoming body) {
        String said = String.join(
                "\n",
                ctx.path(),
                String.valueOf(ctx.queryString()),
                String.valueOf(ctx.contentType()),
                body.digest().hex());
        return Sha256.of(said.getBytes(StandardCharsets.UTF_8));
    }
}
