package groundbass.lesson;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.document.PictureId;
import org.junit.jupiter.api.Test;

/** CommonMark 0.31, section 6.4: images, their words and their titles. */
class NotePicturesTest {
    private static final PictureId ID = new PictureId("abcdefgh12345678");

    @Test
    void whatIsTypedForAPictureIsReadAsThat() {
        String words = "Thumb [on] the *E*\n string, `straight` \\ <wrist> ![no](x)";
        var asked = NotePictures.of("First.\n\n" + NotePictures.typed(ID, words) + "\n");
        assertThat(asked).hasSize(1);
        assertThat(asked.get(0).id()).contains(ID);
        assertThat(asked.get(0).line()).isEqualTo(3);
        assertThat(asked.get(0).words()).isEqualTo("Thumb [on] the *E* string, `straight` \\ <wrist> ![no](x)");
    }

    @Test
    void eachPictureIsNamedOnceAndWhatIsNoIdIsNone() {
        String notes = "![a](picture:abcdefgh12345678 \"Under it\") ![](picture:abcdefgh12345678) ![b](picture:thumb)"
                + " ![c](bars:1) [d](picture:abcdefgh12345678)";
        assertThat(NotePictures.ids(notes)).containsExactly(ID);
        assertThat(NotePictures.of(notes))
                .extracting(asked -> asked.id().isPresent())
                .containsExactly(true, true, false);
        assertThat(NotePictures.of(notes)).extracting(NotePictures.Asked::words).containsExactly("a", "", "b");
    }
}
