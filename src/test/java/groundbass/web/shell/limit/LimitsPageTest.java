package groundbass.web.shell.limit;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Locale;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** OWASP ASVS 5.0, 2.1.3: the page for operators says how often what may be done, as it is. */
class LimitsPageTest {
    private static final Path PAGE = Path.of("src/main/docs/security.md");
    private static final Pattern ROW =
            Pattern.compile("(?m)^\\| `([A-Z_]+)` \\| ([^|]+) \\| [^|]+ \\| [^|]+ \\| (rows|memory) \\|$");

    @Test
    void everyLimitStandsOnThePageAsItIs() throws IOException {
        var told = ROW.matcher(Files.readString(PAGE))
                .results()
                .map(row -> row.group(1) + " " + row.group(2) + " " + row.group(3))
                .toList();
        assertThat(told)
                .containsExactlyElementsOf(
                        Stream.of(Limit.values()).map(LimitsPageTest::words).toList());
    }

    private static String words(Limit limit) {
        String times = String.format(Locale.ENGLISH, "%,d", limit.times);
        String in = limit.keeper == Limit.Keeper.DATABASE ? "rows" : "memory";
        return limit.name() + " " + times + " in " + words(limit.period) + " " + in;
    }

    private static String words(Duration period) {
        if (period.equals(Duration.ofDays(1))) {
            return "a day";
        }
        return period.equals(Duration.ofHours(1)) ? "an hour" : period.toMinutes() + " minutes";
    }
}
