package groundbass.release;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.text.Messages;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.FieldSource;

/** What is offered is explained in the bundle, in both languages. */
class EveryFileRoleTest {
    /** What each exercise has of its own; {@link ReleaseBuilderTest} compares it with what is built. */
    static final List<String> OF_EXERCISES = List.of(
            "practice", "midi", "midi_from_bar_1", "musicxml", "plain_tab", "braille", "braille_text", "line_text");

    @ParameterizedTest
    @EnumSource(FileRole.class)
    void whatIsOfferedIsExplained(FileRole role) {
        for (var locale : List.of(Locale.ENGLISH, Locale.GERMAN)) {
            assertThat(Messages.of(locale).has("release.role." + role.value()))
                    .as(locale.getLanguage())
                    .isEqualTo(role.isOffered());
        }
    }

    @ParameterizedTest
    @FieldSource("OF_EXERCISES")
    void whatEachExerciseHasIsExplained(String form) {
        for (var locale : List.of(Locale.ENGLISH, Locale.GERMAN)) {
            assertThat(Messages.of(locale).has("release.exercise." + form)).isTrue();
            assertThat(Messages.of(locale).has("student.file.exercise." + form)).isTrue();
            // the main line's recordings are named by what sounds and how fast
            assertThat(Messages.of(locale).has("student.file." + form)).isEqualTo(!form.equals("practice"));
            assertThat(Messages.of(locale).has("release.role." + form)).isTrue();
        }
    }
}
