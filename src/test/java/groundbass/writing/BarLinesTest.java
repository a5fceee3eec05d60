package groundbass.writing;

import static groundbass.writing.Rhythms.A3;
import static groundbass.writing.Rhythms.G5;
import static groundbass.writing.Rhythms.note;
import static groundbass.writing.Rhythms.shapes;
import static groundbass.writing.Rhythms.time;
import static org.assertj.core.api.Assertions.assertThat;

import groundbass.score.Bar;
import groundbass.score.Fraction;
import groundbass.score.Header;
import groundbass.score.Line;
import groundbass.score.Meter;
import groundbass.score.Note;
import groundbass.writing.Element.Chord;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Notes at and over bar lines: rule: tie-over-barline. */
class BarLinesTest {
    private static List<WrittenBar> written(Bar... bars) {
        return Writing.of(new Line(Header.PLAIN, Arrays.asList(bars))).bars();
    }

    private static List<String> voices(WrittenBar bar) {
        return bar.voices().stream().map(Rhythms::shapes).toList();
    }

    private static Bar bar(Note... notes) {
        return Bar.of(Meter.COMMON, List.of(notes));
    }

    @Test
    void aNoteHeldOverBarLinesIsTiedInEachBar() {
        var held = note("3/4", "11/8", A3);
        var bars = written(bar(held), bar(), bar(note("1/2", "1/2", A3)));
        assertThat(bars).flatExtracting(BarLinesTest::voices).containsExactly("r2 r4 4~", "1~", "8 r8 r4 2");
    }

    @Test
    void aTiedHeadRemembersItsNoteAndTheBarItBeganIn() {
        var held = note("3/4", "1/2", A3);
        var bars = written(bar(held), bar());
        var head =
                ((Chord) bars.get(1).voices().get(0).elements().get(0)).heads().get(0);
        assertThat(head.note()).isEqualTo(held);
        assertThat(head.noteBar()).isEqualTo(1);
        assertThat(head.tiedFrom()).isTrue();
        assertThat(head.tiedTo()).isFalse();
    }

    @Test
    void oneNoteOfAChordMayBeTiedAlone() {
        var bars = written(bar(note("1/2", "1", A3), note("1/2", "1/2", G5)), bar());
        var chord = (Chord) bars.get(0).voices().get(0).elements().get(1);
        assertThat(chord.heads()).extracting(Head::tiedTo).containsExactly(true, false);
        assertThat(voices(bars.get(1))).containsExactly("2 r2");
    }

    @Test
    void aNoteHeldInWhileOthersMoveMakesTwoVoices() {
        var bars = written(bar(note("1/2", "1", A3)), bar(note("0", "1/4", G5), note("1/4", "1/4", G5)));
        assertThat(voices(bars.get(0))).containsExactly("r2 2~");
        assertThat(voices(bars.get(1))).containsExactly("4 4 r2", "2 [r2]");
    }

    @Test
    void aPickupBeginsAtItsFirstCount() {
        var pickup = bar(note("3/4", "1/8", A3)).between(time("3/4"), Fraction.ONE);
        var voice = written(pickup, bar()).get(0).voices().get(0);
        assertThat(shapes(voice)).isEqualTo("8 r8");
        assertThat(voice.elements().get(0).onset()).isEqualTo(time("3/4"));
    }

    @Test
    void aShortBarEndsWhereItWasCut() {
        var cut = bar(note("0", "3/8", A3)).between(Fraction.ZERO, time("1/2"));
        assertThat(voices(written(cut).get(0))).containsExactly("4. r8");
    }

    @Test
    void aShortSilentBarHasAWholeRest() {
        var cut = bar().between(Fraction.ZERO, time("1/2"));
        assertThat(voices(written(cut).get(0))).containsExactly("R");
    }
}
