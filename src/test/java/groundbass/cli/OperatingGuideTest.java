package groundbass.cli;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.Main;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.MatchResult;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import picocli.CommandLine.Model.OptionSpec;

/** What the guide for operators tells to type is what the program knows. */
class OperatingGuideTest {
    private static final Path GUIDE = Path.of("src", "main", "docs", "operating.md");

    private static List<MatchResult> found(String pattern) throws IOException {
        return Pattern.compile(pattern, Pattern.MULTILINE)
                .matcher(Files.readString(GUIDE))
                .results()
                .toList();
    }

    @Test
    void everyVariableIsASettingOfServe() throws IOException {
        Map<String, String> variables = found("^(GROUNDBASS_\\w+)=(.+)$").stream()
                .collect(Collectors.toMap(match -> match.group(1), match -> match.group(2)));
        assertThat(variables).hasSizeGreaterThan(5);
        var serve = Main.commandLine(variables).parseArgs("serve").subcommand().commandSpec();
        var known = serve.options().stream()
                .map(OptionSpec::longestName)
                .map(name -> "GROUNDBASS_" + name.substring(2).replace('-', '_').toUpperCase(Locale.ROOT))
                .toList();
        assertThat(known).containsAll(variables.keySet());
        Object mail = serve.findOption("--smtp-host").getValue();
        assertThat(String.valueOf(mail)).contains("mail.grooves.example");
    }

    @Test
    void everyCommandIsUnderstood() throws IOException {
        var commands = found("groundbass\\.jar ([^`\n]+)$");
        assertThat(commands).hasSizeGreaterThanOrEqualTo(3);
        for (var command : commands) {
            String[] words = command.group(1).split(" ");
            assertThat(Main.commandLine(Map.of()).parseArgs(words).hasSubcommand())
                    .as(command.group(1))
                    .isTrue();
        }
    }

    /** With what the build runs the program, the guide has it run. */
    @Test
    void theOptionsAreThoseOfTheBuild() throws IOException {
        String options = Files.readString(Path.of("src", "build", "options"));
        assertThat(options.lines()).hasSizeGreaterThan(5);
        assertThat(Files.readString(GUIDE)).contains("```\n" + options);
    }
}
