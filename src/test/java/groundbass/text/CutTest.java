package groundbass.text;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class CutTest {
    /** A G clef, U+1D11E, is two chars (Unicode Standard, chapter 3.8, surrogates). */
    @Test
    void aSurrogatePairIsNotCutInTwo() {
        assertThat(Cut.to("ab\uD834\uDD1E", 4)).isEqualTo("ab\uD834\uDD1E");
        assertThat(Cut.to("ab\uD834\uDD1E", 3)).isEqualTo("ab");
        assertThat(Cut.to("ab\uD834\uDD1E", 2)).isEqualTo("ab");
        assertThat(Cut.to("abc", 0)).isEmpty();
    }
}
