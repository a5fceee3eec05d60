package groundbass.release;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.text.Messages;
import java.util.List;
import java.util.Locale;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** What is offered is explained in the bundle, in both languages. */
class EveryFileRoleTest {
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
    @EnumSource(
            value = FileRole.class,
            names = {"MIDI", "MUSICXML", "PLAIN_TAB", "BRAILLE", "BRAILLE_TEXT", "LINE_TEXT"})
    void whatEachExerciseHasIsExplained(FileRole role) {
        for (var locale : List.of(Locale.ENGLISH, Locale.GERMAN)) {
            assertThat(Messages.of(locale).has("release.exercise." + role.value()))
                    .isTrue();
            assertThat(Messages.of(locale).has("student.file.exercise." + role.value()))
                    .isTrue();
            assertThat(Messages.of(locale).has("student.file." + role.value())).isTrue();
        }
    }
}
