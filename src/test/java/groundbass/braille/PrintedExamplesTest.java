package groundbass.braille;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.score.Meter;
import groundbass.score.Ornaments.Mark;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Examples as the Music Braille Code of 1997 prints them in ASCII braille, by their numbers, and rules without one. */
class PrintedExamplesTest {
    private static final Meter ONE_FOUR = Meter.of(1, 4);

    /** MBC 1997, example 1.1-1. */
    @Test
    void aThirtySecondAfterAHalf() {
        assertThat(PrintedMusic.cells(Meter.of(3, 4), "C5:2 C5:32 D5:32 E5:32 F5:32 G5:8"))
                .isEqualTo(".N,<1NOPQH<K");
    }

    /** MBC 1997, example 1.2-1. */
    @Test
    void aPickupOfASmallValue() {
        assertThat(PrintedMusic.cells(
                        Meter.COMMON, "G3:16", "C4:8 r:8 B3:8 r:8 C4:8 r:8 D4:8 r:8", "E4:8 r:8 F4:8 r:8 D4:2"))
                .isEqualTo(",<1_( \"DXJXDXEX FXGXO<K");
    }

    /** MBC 1997, example 7.4-1. */
    @Test
    void eighthsThatLookLikeAGroupOfSixteenths() {
        assertThat(PrintedMusic.cells(Meter.of(2, 4), "E5:16 D5:8 C5:8 B4:8 A4:16", "G4:4 r:4"))
                .isEqualTo(".&^<1EDJ! \\V<K");
    }

    /** MBC 1997, example 9.1-1: ties, and steps of every size. */
    @Test
    void tiesAndOctaveMarks() {
        assertThat(PrintedMusic.cells(
                        Meter.of(3, 4), "D5~:4", "D5:4 G5:4 E5:4", "D5:4 C5:4 C5~:4", "C5:4 A5:4 C5~:4", "C5:4 B4:4"))
                .isEqualTo(".:@C :\\$ :??@C ?.[.?@C ?W<K");
    }

    /** MBC 1997, example 8.2-1, the left hand; its score marks octaves anew in each bar, a single line does not. */
    @Test
    void intervalsOfABassReadUpward() {
        assertThat(PrintedMusic.cells(
                        Meter.COMMON, "C3+G3:4", "E3+G3:4 F3+C4:4 G3+B3:4 E3+C4:4", "F3+A3:4 D3+F3:4 C3+G3:4"))
                .isEqualTo("_?9 $+]9\\+$0 ]+:+?9<K");
    }

    /** MBC 1997, example 18.1-1, its first three bars. */
    @Test
    void signsOfAttackInTheirOrder() {
        assertThat(PrintedMusic.cells(ONE_FOUR, List.of(Mark.SHORT, Mark.ACCENT), "C4:4"))
                .isEqualTo("8.8\"?<K");
        assertThat(PrintedMusic.cells(ONE_FOUR, List.of(Mark.SHORT, Mark.MARCATO), "C4:4"))
                .isEqualTo("8;8\"?<K");
        assertThat(PrintedMusic.cells(ONE_FOUR, List.of(Mark.ACCENT, Mark.TENUTO, Mark.FERMATA), "C4:4"))
                .isEqualTo(".8_8\"?<L<K");
    }

    /** NIM 1996, 5-3 to 5-5: beyond an octave, and the unison, an interval has its octave. rule: braille-intervals */
    @Test
    void intervalsWithTheirOctave() {
        assertThat(PrintedMusic.cells(ONE_FOUR, "C3+C4:4")).isEqualTo("_?-<K");
        assertThat(PrintedMusic.cells(ONE_FOUR, "C3+D4:4")).isEqualTo("_?\"/<K");
        assertThat(PrintedMusic.cells(ONE_FOUR, "C3+C3:4")).isEqualTo("_?_-<K");
        assertThat(PrintedMusic.cells(ONE_FOUR, "C3+E3+G4:4")).isEqualTo("_?+\"9<K");
        assertThat(PrintedMusic.cells(ONE_FOUR, "C3+G3+E4:4")).isEqualTo("_?9+<K");
    }

    /** NIM 1996, 5-3 and MBC 1997, 9.5: one tie for a chord that is held as a whole, else one for each note. */
    @Test
    void tiesOfChords() {
        assertThat(PrintedMusic.cells(Meter.of(2, 4), "C3~+G3~:4 C3+G3:4")).isEqualTo("_?9.C?9<K");
        assertThat(PrintedMusic.cells(Meter.of(2, 4), "C3~+G3:4 C3+A3:4")).isEqualTo("_?@C9?0<K");
    }

    /** rule: braille-value-signs: where two readings fill a bar, the smaller values are told. */
    @Test
    void aBarThatTwoReadingsFill() {
        // 15/16: fifteen sixteenths and nothing else can only be sixteenths
        assertThat(PrintedMusic.cells(Meter.of(1, 8), "C4:16 C4:16")).isEqualTo("\"YY<K");
        // a bar that is not whole tells nothing of its values
        assertThat(PrintedMusic.cells(Meter.COMMON, "C4:16 C4:16")).isEqualTo(",<1\"YY<K");
        assertThat(PrintedMusic.cells(Meter.COMMON, "C4:4 C4:4")).isEqualTo("\"??<K");
    }
}
