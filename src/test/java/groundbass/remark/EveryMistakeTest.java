package groundbass.remark;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.params.provider.Arguments.arguments;

import groundbass.groove.GrooveMistake;
import groundbass.linetext.problem.Mistake;
import groundbass.text.Languages;
import groundbass.text.Message;
import groundbass.text.Messages;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

class EveryMistakeTest {
    static Stream<String> keys() {
        return Stream.of(
                        Arrays.stream(Mistake.values()).map(Mistake::messageKey),
                        Arrays.stream(GrooveMistake.values()).map(GrooveMistake::messageKey),
                        Arrays.stream(Severity.values()).map(Severity::messageKey))
                .flatMap(keys -> keys);
    }

    @ParameterizedTest
    @MethodSource("keys")
    void hasASentenceInEachLanguage(String key) {
        var sentences = Languages.SPOKEN.stream()
                .map(language -> Messages.of(language).say(key, 1, 2, 3, 4))
                .toList();
        assertThat(sentences).doesNotHaveDuplicates().hasSizeGreaterThan(1);
    }

    @ParameterizedTest
    @MethodSource("lists")
    void offersWhatWasMeantAsAPersonListsIt(List<String> offers, String english, String german) {
        var remark = Remark.error("any", new Span(1, 1, 1), Message.of("remark.typed", "So."))
                .suggesting(offers.stream());
        assertThat(Messages.of(Locale.ENGLISH).say(remark.sentence())).isEqualTo("So." + english);
        assertThat(Messages.of(Locale.GERMAN).say(remark.sentence())).isEqualTo("So." + german);
    }

    static Stream<Arguments> lists() {
        return Stream.of(
                arguments(List.of(), "", ""),
                arguments(List.of("5"), " Did you mean 5?", " Meintest du 5?"),
                arguments(List.of("5", "8"), " Did you mean 5 or 8?", " Meintest du 5 oder 8?"),
                arguments(List.of("1", "1e", "1&"), " Did you mean 1, 1e or 1&?", " Meintest du 1, 1e oder 1&?"));
    }
}
