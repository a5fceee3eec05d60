package groundbass;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.linetext.LineText;
import groundbass.score.Technique;
import groundbass.text.Messages;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/** A technique is told, printed and specified wherever one that is forgotten would not stop the compiler. */
class EveryTechniqueTest {
    private static final Path SPECIFICATION = Path.of("src/test/resources/spec/line-text");
    private static final Set<Technique> SHOWN = shown();

    @ParameterizedTest
    @EnumSource(Technique.class)
    void hasItsWordsInBothLanguages(Technique technique) {
        // the student reads of one finger or the other as of fingers
        boolean oneFinger = technique == Technique.INDEX || technique == Technique.MIDDLE;
        String told = oneFinger ? Technique.FINGER.word() : technique.word();
        for (var locale : List.of(Locale.ENGLISH, Locale.GERMAN)) {
            var messages = Messages.of(locale);
            assertThat(Stream.of(
                            "walkthrough.pluck." + technique.word(),
                            "sheet.sign." + technique.name().toLowerCase(Locale.ROOT),
                            "desk.letters.word." + technique.word(),
                            "student.technique." + told))
                    .as(locale.getLanguage())
                    .allMatch(messages::has);
        }
    }

    @ParameterizedTest
    @EnumSource(Technique.class)
    void isInTheSpecification(Technique technique) {
        var word = Pattern.compile("\\b" + technique.word() + "\\b");
        assertThat(files(SPECIFICATION)).anyMatch(text -> word.matcher(text).find());
    }

    @ParameterizedTest
    @EnumSource(Technique.class)
    void isInTheGallery(Technique technique) {
        assertThat(SHOWN).contains(technique);
    }

    private static Set<Technique> shown() {
        return Stream.of(resource("/groundbass/lesson/gallery.txt").split("\n----\n"))
                .map(example -> LineText.read(example.substring(example.indexOf("\n\n") + 2))
                        .line())
                .flatMap(line -> line.bars().stream())
                .flatMap(bar -> bar.notes().stream())
                .flatMap(note -> note.pluck().stream())
                .collect(Collectors.toUnmodifiableSet());
    }

    private static String resource(String name) {
        try (var in = EveryTechniqueTest.class.getResourceAsStream(name)) {
            return new String(in.readAllBytes(), java.nio.charset.StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static List<String> files(Path folder) {
        try (var files = Files.walk(folder)) {
            return files.filter(Files::isRegularFile)
                    .map(EveryTechniqueTest::read)
                    .toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static String read(Path file) {
        try {
            return Files.readString(file);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
