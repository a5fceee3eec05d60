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
    static final List<FileRole> OF_EXERCISES = List.of(
            FileRole.PRACTICE,
            FileRole.MIDI,
            FileRole.MUSICXML,
            FileRole.PLAIN_TAB,
            FileRole.BRAILLE,
            FileRole.BRAILLE_TEXT,
            FileRole.LINE_TEXT);

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
    void whatEachExerciseHasIsExplained(FileRole role) {
        for (var locale : List.of(Locale.ENGLISH, Locale.GERMAN)) {
            assertThat(Messages.of(locale).has("release.exercise." + role.value()))
                    .isTrue();
            assertThat(Messages.of(locale).has("student.file.exercise." + role.value()))
                    .isTrue();
            // the main line's recordings are named by what sounds and how fast
            assertThat(Messages.of(locale).has("student.file." + role.value())).isEqualTo(role != FileRole.PRACTICE);
        }
    }
}
