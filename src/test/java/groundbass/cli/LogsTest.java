package groundbass.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.ObjectMapper;
import groundbass.store.RequestId;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import org.eclipse.jetty.util.HostPort;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.slf4j.LoggerFactory;

/** How the log is written, read off a process of its own: the log of a process is one for all that runs in it. */
class LogsTest {
    private static final String SECRET = "a-session-that-nobody-guesses";
    private static final String FORGED = "2030-03-01T12:00:00.000Z ERROR groundbass.trial forged";

    /** Writes a line of each weight, and a fault, in the form that the arguments name. */
    public static final class Writer {
        private Writer() {}

        public static void main(String[] args) {
            Logs.write(LogForm.valueOf(args[0]), LogLevel.valueOf(args[1]));
            var log = LoggerFactory.getLogger("groundbass.trial");
            log.debug("fine");
            log.info("two\nlines");
            RequestId.begin();
            log.error("broken", new IllegalStateException("inside\n" + FORGED));
            LoggerFactory.getLogger("library").info("chatter");
            HostPort.unsafe("host name; session=" + SECRET);
        }
    }

    private static List<String> written(LogForm form, LogLevel from) throws Exception {
        String java = Path.of(System.getProperty("java.home"), "bin", "java").toString();
        var process = new ProcessBuilder(
                        java,
                        "-cp",
                        System.getProperty("java.class.path"),
                        Writer.class.getName(),
                        form.name(),
                        from.name())
                .redirectErrorStream(true)
                .start();
        String all = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertThat(process.waitFor(30, TimeUnit.SECONDS)).isTrue();
        return all.lines().toList();
    }

    /** The moment as RFC 3339 has it, with its zone: lines of several machines are read beside one another. */
    @Test
    void aLineForPeopleBeginsWithItsMoment() throws Exception {
        var lines = written(LogForm.TEXT, LogLevel.INFO);
        assertThat(lines.get(0))
                .matches(
                        "\\d{4}-\\d\\d-\\d\\dT\\d\\d:\\d\\d:\\d\\d\\.\\d{3}(Z|[+-]\\d\\d:\\d\\d) INFO +groundbass\\.trial two lines");
        assertThat(lines).noneMatch(line -> line.contains("fine") || line.contains("chatter"));
    }

    /** OWASP ASVS 5.0, 16.4.1: what was sent may stand in a message, and looks like no line of the log. */
    @Test
    void nothingInsideALineBeginsAnother() throws Exception {
        var lines = written(LogForm.TEXT, LogLevel.INFO);
        assertThat(lines)
                .anyMatch(line -> line.matches("\\S+ ERROR groundbass\\.trial \\[[a-z2-9]{16}] broken"))
                .anyMatch(line -> line.strip().equals(FORGED))
                .anyMatch(line -> line.contains("at groundbass."));
        assertThat(lines).filteredOn(line -> !line.startsWith("  ")).hasSize(2);
    }

    /** OWASP ASVS 5.0, 16.2.5: the web server's library would print a Host header that is none, whatever stands in it. */
    @ParameterizedTest
    @EnumSource(LogForm.class)
    void aHeaderThatIsMisplacedIsNotPrinted(LogForm form) throws Exception {
        assertThat(written(form, LogLevel.INFO)).noneMatch(line -> line.contains(SECRET));
    }

    /** RFC 8259 for each line: a line feed inside a message does not begin another. */
    @Test
    void eachLineForProgramsIsOneObjectWithItsTrace() throws Exception {
        var lines = written(LogForm.JSON, LogLevel.DEBUG);
        assertThat(lines).hasSize(3);
        var reader = new ObjectMapper();
        assertThat(reader.readTree(lines.get(1)).path("message").asText()).isEqualTo("two\nlines");
        var fault = reader.readTree(lines.get(2));
        assertThat(fault.path("level").asText()).isEqualTo("ERROR");
        assertThat(fault.path("throwable").path("message").asText()).isEqualTo("inside\n" + FORGED);
        assertThat(fault.path("throwable").path("stepArray")).isNotEmpty();
        assertThat(fault.path("mdc").path("request").asText()).matches("[a-z2-9]{16}");
        assertThat(reader.readTree(lines.get(1)).path("mdc").path("request").isMissingNode())
                .isTrue();
    }
}
