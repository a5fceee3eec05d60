package groundbass.walkthrough.words;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.text.Messages;
import java.util.Locale;
import org.junit.jupiter.api.Test;

/** Under the name of a bar nobody reads it once more, however the step begins. */
class UnderHeadingTest {
    private static final Messages ENGLISH = Messages.of(Locale.ENGLISH);

    @Test
    void theNameOfTheBarIsNotReadTwice() {
        assertThat(UnderHeading.text(ENGLISH, 3, "Bar 3: the same as bar 1.")).isEqualTo("The same as bar 1.");
        assertThat(UnderHeading.text(ENGLISH, 3, "Bar 3, beat 2: rest.")).isEqualTo("Beat 2: rest.");
        assertThat(UnderHeading.text(ENGLISH, 3, "Bar 3. Shift: index finger at fret 2. Play on."))
                .isEqualTo("Shift: index finger at fret 2. Play on.");
        assertThat(UnderHeading.text(ENGLISH, 3, "Bar 30. Play on.")).isEqualTo("Bar 30. Play on.");
    }
}
