package groundbass.script;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Locale;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** The basic statements in German; H and B are the German names of B and B flat (common practice, no source). */
class GermanTest {
    @ParameterizedTest
    @ValueSource(
            strings = {
                "Der dritte Bund der A-Saite ist ein C.",
                "Takt 5 beginnt mit G, dritter Bund auf der E-Saite.",
                "In Takt 1 ist der letzte Ton ein H, zweiter Bund der A-Saite.",
                "Der sechste Bund der E-Saite ist ein B.",
                "Takt 4 ist gleich Takt 2.",
                "Im Takt 3 auf Schlag 4 kommt ein Cis, eine Achtel.",
                "Die Linie steht in E dorisch."
            })
    void agrees(String sentence) {
        var read = read(sentence);
        assertThat(read.contradictions()).isEmpty();
        assertThat(read.agreeing() + read.readInPart()).isPositive();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "Der dritte Bund der A-Saite ist ein D.",
                "Takt 5 beginnt mit G, fünfter Bund auf der E-Saite.",
                "In Takt 1 ist der letzte Ton ein B, zweiter Bund der A-Saite.",
                "Der sechste Bund der E-Saite ist ein H.",
                "Takt 4 ist gleich Takt 3.",
                "Im Takt 3 auf Schlag 4 kommt ein Cis, eine punktierte Achtel.",
                "Die Linie steht in d-Moll."
            })
    void contradicts(String sentence) {
        assertThat(read(sentence).contradictions()).isNotEmpty();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "Nicht der fünfte Bund der A-Saite, das wäre ein D.",
                "Ist das ein C im vierten Bund der A-Saite?",
                "Spiel es langsam und ohne Eile.",
                "Es geht um den Ton, nicht um das Tempo."
            })
    void saysNothingWrong(String sentence) {
        assertThat(read(sentence).contradictions()).isEmpty();
    }

    private static Proofreading read(String sentence) {
        return Proofreading.of(sentence, FrozenSentencesTest.line("01-rope-and-pulley"), Locale.GERMAN);
    }
}
