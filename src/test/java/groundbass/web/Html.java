package groundbass.web;

import java.io.ByteArrayOutputStream;
import java.io.StringReader;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import nu.validator.messages.MessageEmitterAdapter;
import nu.validator.messages.TextMessageEmitter;
import nu.validator.source.SourceCode;
import nu.validator.validation.SimpleDocumentValidator;
import nu.validator.xml.SystemErrErrorHandler;
import org.xml.sax.InputSource;

/** The HTML conformance checker of the standard's own community (nu.validator). Thread-safe. */
public final class Html {
    private static final String SCHEMA = "http://s.validator.nu/html5-rdfalite.rnc";

    /** The schema's patterns are followed by recursion, thousands of steps deep; in bytes. */
    private static final long STACK = 1 << 24;

    private static final ExecutorService DEEP = Executors.newSingleThreadExecutor(run -> {
        var thread = new Thread(null, run, "html", STACK);
        thread.setDaemon(true);
        return thread;
    });

    /** Reading the schema takes longer than checking a page against it. */
    private static final Future<SimpleDocumentValidator> VALIDATOR = DEEP.submit(Html::validator);

    private Html() {}

    /** What does not conform to the HTML standard, a line each; warnings count. */
    public static List<String> mistakes(String page) {
        try {
            return DEEP.submit(() -> check(VALIDATOR.get(), page)).get();
        } catch (ExecutionException e) {
            throw new IllegalStateException("the checker failed", e);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException(e);
        }
    }

    private static SimpleDocumentValidator validator() throws Exception {
        var validator = new SimpleDocumentValidator();
        validator.setUpMainSchema(SCHEMA, new SystemErrErrorHandler());
        return validator;
    }

    private static List<String> check(SimpleDocumentValidator validator, String page) throws Exception {
        var found = new ByteArrayOutputStream();
        var messages = new MessageEmitterAdapter(
                null, new SourceCode(), false, null, 1, false, new TextMessageEmitter(found, true));
        messages.setErrorsOnly(false);
        validator.setUpValidatorAndParsers(messages, false, false);
        messages.start(null);
        validator.checkHtmlInputSource(new InputSource(new StringReader(page)));
        messages.end("", "", "");
        var text = found.toString(StandardCharsets.UTF_8);
        boolean clean = messages.getErrors() + messages.getWarnings() + messages.getFatalErrors() == 0;
        return clean ? List.of() : text.lines().filter(line -> !line.isBlank()).toList();
    }
}
