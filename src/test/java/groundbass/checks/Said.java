package groundbass.checks;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.checks.finding.Finding;
import groundbass.linetext.LineText;
import groundbass.score.Count;
import groundbass.score.Line;
import groundbass.text.Messages;
import java.util.List;
import java.util.Locale;

/** Lines typed as an educator types them, and what is said of them. */
public final class Said {
    private static final String HEAD = """
            key C major
            meter 4/4
            tempo 80
            strings E A D G
            style finger

            """;

    private Said() {}

    /** A line of these bars in C major at 80, on four strings. */
    public static Line bars(String text) {
        return line(HEAD + text);
    }

    public static Line line(String text) {
        var reading = LineText.read("test", text);
        assertThat(reading.problems()).isEmpty();
        return reading.line();
    }

    public static List<String> codes(Line line) {
        return Checks.of(line).stream().map(Finding::code).toList();
    }

    public static Finding only(Line line, String code) {
        var found = Checks.of(line).stream()
                .filter(finding -> finding.code().equals(code))
                .toList();
        assertThat(found).as(code + " in " + Checks.of(line)).hasSize(1);
        return found.get(0);
    }

    /** Where a finding begins, as players say it: {@code 3.2&}. */
    public static String count(Line line, Finding finding) {
        var position = finding.position();
        var meter = line.inForce().get(line.indexOf(position.bar())).meter();
        return position.bar() + "." + Count.at(position.at(), meter).orElseThrow();
    }

    public static String text(Finding finding) {
        return Messages.of(Locale.ENGLISH).say(finding.reason());
    }
}
