package groundbass.script.words;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class WordsTest {
    /** A chord over another bass is written with a stroke: common practice, no source. */
    @ParameterizedTest
    @ValueSource(strings = {"F/C", "D7/F#", "D7/F♯", "A/C#", "Cm7/Bb", "E7/G♯"})
    void aChordAndItsBassAreOneWord(String chord) {
        var words = Words.sentences("Bar two is over " + chord + " here.").get(0);
        assertThat(words).extracting(Word::raw).containsExactly("Bar", "two", "is", "over", chord, "here", ".");
    }
}
