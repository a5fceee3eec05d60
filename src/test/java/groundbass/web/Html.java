package groundbass.web;

import java.io.ByteArrayOutputStream;
import java.io.StringReader;
import java.nio.charset.StandardCharsets;
import java.util.List;
import nu.validator.messages.MessageEmitterAdapter;
import nu.validator.messages.TextMessageEmitter;
import nu.validator.source.SourceCode;
import nu.validator.validation.SimpleDocumentValidator;
import nu.validator.xml.SystemErrErrorHandler;
import org.xml.sax.InputSource;

/** The HTML conformance checker of the standard's own community (nu.validator). */
public final class Html {
    private static final String SCHEMA = "http://s.validator.nu/html5-rdfalite.rnc";

    private Html() {}

    /** What does not conform to the HTML standard, a line each; warnings count. */
    public static List<String> mistakes(String page) {
        try {
            return check(page);
        } catch (Exception e) {
            throw new IllegalStateException("the checker failed", e);
        }
    }

    private static List<String> check(String page) throws Exception {
        var found = new ByteArrayOutputStream();
        var messages = new MessageEmitterAdapter(
                null, new SourceCode(), false, null, 1, false, new TextMessageEmitter(found, true));
        messages.setErrorsOnly(false);
        var validator = new SimpleDocumentValidator();
        validator.setUpMainSchema(SCHEMA, new SystemErrErrorHandler());
        validator.setUpValidatorAndParsers(messages, false, false);
        messages.start(null);
        validator.checkHtmlInputSource(new InputSource(new StringReader(page)));
        messages.end("", "", "");
        var text = found.toString(StandardCharsets.UTF_8);
        boolean clean = messages.getErrors() + messages.getWarnings() + messages.getFatalErrors() == 0;
        return clean ? List.of() : text.lines().filter(line -> !line.isBlank()).toList();
    }
}
