package groundbass.script;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.score.Line;
import groundbass.score.RandomLines;
import groundbass.text.Messages;
import groundbass.walkthrough.Walkthrough;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What the program itself tells of a line is never called wrong, in any language that it tells it in. */
class OwnWordsTest {
    private static final List<String> DEMO = List.of(
            "01-rope-and-pulley",
            "02-night-ferry",
            "03-slow-tide",
            "04-below-the-waterline",
            "05-three-legged-gull",
            "06-last-lantern-home");

    @ParameterizedTest
    @ValueSource(strings = {"en", "en-GB", "de"})
    void ofTheDemonstrationNothingIs(String language) {
        var told = DEMO.stream().map(FrozenSentencesTest::line).toList();
        var heard = hear(told, Locale.forLanguageTag(language));
        assertThat(heard.statements()).isGreaterThan(450);
        assertThat(heard.alarms()).isEmpty();
    }

    /** Lines that no hand would play, told in words that stretch every rule; few of another region's, most are the same. */
    @ParameterizedTest
    @CsvSource({"en, 100", "en-GB, 25", "de, 100"})
    void ofOddLinesTwoInAThousandAre(String language, int odd) {
        long seed = 20261129;
        var lines = Stream.iterate(seed, next -> next + 1)
                .limit(odd)
                .map(RandomLines::line)
                .toList();
        var heard = hear(lines, Locale.forLanguageTag(language));
        System.out.println(language + ": called wrong " + heard.alarms().size() + " of " + heard.statements()
                + ", seed " + seed + ": " + heard.alarms());
        assertThat(heard.statements()).isGreaterThan(20 * odd);
        assertThat(heard.alarms().size() * 1000).isLessThanOrEqualTo(2 * heard.statements());
    }

    private record Heard(int statements, List<String> alarms) {}

    private static Heard hear(List<Line> lines, Locale language) {
        var alarms = new ArrayList<String>();
        int statements = 0;
        for (var line : lines) {
            String told = Walkthrough.of(line, Messages.of(language)).stream()
                    .map(step -> step.text())
                    .collect(Collectors.joining("\n\n"));
            var read = Proofreading.of(told, line, language);
            statements += read.statements().size();
            read.contradictions().forEach(wrong -> alarms.add(told.substring(wrong.from(), wrong.to())));
        }
        return new Heard(statements, alarms);
    }
}
