package groundbass.checks;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.linetext.LineText;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** rule: groove-figures: usual grooves are left alone. */
class GroovesTest {
    static Stream<String> grooves() throws IOException {
        try (var in = GroovesTest.class.getResourceAsStream("/checks/grooves.txt")) {
            String text = new String(in.readAllBytes(), StandardCharsets.UTF_8);
            return Arrays.stream(text.split("\n(?=title )")).skip(1);
        }
    }

    @ParameterizedTest
    @MethodSource("grooves")
    void aUsualGrooveIsLeftAlone(String text) {
        var reading = LineText.read(text);
        assertThat(reading.problems()).isEmpty();
        assertThat(Checks.of(reading.line())).isEmpty();
    }
}
