package groundbass.web.shell;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.web.Stage;
import groundbass.web.shell.limit.WaitResponse;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** What a page holds that refuses something for a while: all that was typed, but nothing that opens an account. */
class RepeatTest {
    private static final String VALUE = "typed-by-hand";

    /** A field by what a browser is told to fill in there (HTML, "autofill field names"): named by itself, or in a part. */
    private static final Pattern BY_PART =
            Pattern.compile("part-access\\('(\\w+)'[^\n]*?'(?:current-password|new-password|one-time-code)'");

    private static final Pattern BY_INPUT =
            Pattern.compile("<input[^>]*\\bname=\"(\\w+)\"[^>]*(?:type=\"password\"|autocomplete=\"one-time-code\")"
                    + "|<input[^>]*(?:type=\"password\"|autocomplete=\"one-time-code\")[^>]*\\bname=\"(\\w+)\"");

    private static Set<String> secretFields() throws IOException {
        var names = new TreeSet<String>();
        try (Stream<Path> all = Files.walk(Path.of("templates"))) {
            for (var template : all.filter(Files::isRegularFile).toList()) {
                String text = Files.readString(template);
                BY_PART.matcher(text).results().forEach(found -> names.add(found.group(1)));
                BY_INPUT.matcher(text)
                        .results()
                        .forEach(found -> names.add(found.group(1) == null ? found.group(2) : found.group(1)));
            }
        }
        return names;
    }

    @Test
    void noPasswordOrCodeComesBack() throws IOException {
        var secrets = secretFields();
        assertThat(secrets).contains("password", "present", "known", "chosen", "factor", "code");
        try (var stage = Stage.with(routes -> routes.post("/busy", Role.ANYONE, ctx -> {
            throw WaitResponse.busy(Duration.ofSeconds(5));
        }))) {
            for (String name : secrets) {
                String page = sent(stage, name);
                assertThat(page).as(name).doesNotContain(VALUE).contains("id=\"secret-" + name + "\"");
                assertThat(page).as("each has a label of its own").doesNotContain("??");
            }
            assertThat(sent(stage, "title")).contains(VALUE);
        }
    }

    private static String sent(Stage stage, String field) {
        return stage.request()
                .accept("text/html")
                .header("Sec-Fetch-Site", "same-origin")
                .contentType("application/x-www-form-urlencoded")
                .formParam(field, VALUE)
                .post("/busy")
                .asString();
    }
}
