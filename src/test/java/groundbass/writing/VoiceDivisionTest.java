package groundbass.writing;

import static groundbass.writing.Rhythms.A3;
import static groundbass.writing.Rhythms.G5;
import static groundbass.writing.Rhythms.note;
import static groundbass.writing.Rhythms.notes;
import static org.assertj.core.api.Assertions.assertThat;

import groundbass.score.Meter;
import groundbass.score.Note;
import groundbass.score.Ornaments;
import groundbass.score.Ornaments.Mark;
import groundbass.score.Place;
import groundbass.writing.Element.Chord;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Two voices on one staff, upper and lower: rule: two-voice-stems. What goes where is common practice, no source. */
class VoiceDivisionTest {
    private static List<String> voices(Note... notes) {
        return Rhythms.bar(Meter.COMMON, Arrays.asList(notes)).voices().stream()
                .map(Rhythms::shapes)
                .toList();
    }

    @Test
    void notesOfEqualOnsetAndLengthShareAStem() {
        var bar = Rhythms.bar(Meter.COMMON, List.of(note("0", "1/2", A3), note("0", "1/2", G5)));
        assertThat(bar.voices()).hasSize(1);
        var chord = (Chord) bar.voices().get(0).elements().get(0);
        assertThat(chord.heads()).extracting(head -> head.note().place()).containsExactly(A3, G5);
    }

    @Test
    void aNoteHeldWhileOthersMoveGetsAVoiceOfItsOwn() {
        assertThat(voices(note("0", "1", A3), note("0", "1/2", G5), note("1/2", "1/2", G5)))
                .containsExactly("2 2", "1");
    }

    @Test
    void theHeldNoteMayBeTheUpper() {
        assertThat(voices(note("0", "1", G5), note("0", "1/2", A3), note("1/2", "1/2", A3)))
                .containsExactly("1", "2 2");
    }

    @Test
    void aChordOfDifferentLengthsMakesTwoVoices() {
        assertThat(voices(note("0", "1/2", A3), note("0", "1/4", G5))).containsExactly("4 r4 r2", "2 [r2]");
    }

    /** Before and after the held note one voice has everything (rule: two-voices-where-held). */
    @Test
    void theRestOfTheBarIsOneVoice() {
        var low = Place.of(4, 3);
        var notes = notes("1/16 1/16 1/16 1/16 1/8 1/8");
        notes.add(note("1/2", "1/2", low));
        notes.add(note("1/2", "1/8", G5));
        notes.add(note("5/8", "1/8", G5));
        notes.add(note("3/4", "1/4", G5));
        var bar = Rhythms.bar(Meter.COMMON, notes);
        assertThat(bar.voices().stream().map(Rhythms::shapes)).containsExactly("16 16 16 16 8 8 8 8 4", "[r2] 2");
        assertThat(bar.voices().get(0).beams()).hasSize(3);
        assertThat(bar.voicesAt(bar.voices().get(0).elements().get(5))).isEqualTo(1);
        assertThat(bar.voicesAt(bar.voices().get(0).elements().get(6))).isEqualTo(2);
    }

    /** Where two voices stand, each adds up for the reader (rule: two-voices-where-held). */
    @Test
    void bothVoicesShowTheirRestsInTheBeatsThatTheyShare() {
        assertThat(voices(note("0", "1/2", A3), note("1/8", "1/8", G5))).containsExactly("r8 8 r4 r2", "2 [r2]");
    }

    /** The upper enters late: its rest is read, the lower's silence after the hold only fills. */
    @Test
    void restsThatOnlyFillAreHidden() {
        assertThat(voices(note("0", "3/4", A3), note("1/4", "1/4", G5), note("1/2", "1/4", G5)))
                .containsExactly("r4 4 4 r4", "2. [r4]");
    }

    @Test
    void aNoteAfterTheHeldOneIsInTheFirstVoice() {
        var low = Place.of(4, 3);
        assertThat(voices(note("0", "1/2", A3), note("0", "1/4", G5), note("1/2", "1/4", low), note("3/4", "1/4", G5)))
                .containsExactly("4 r4 4 4", "2 [r2]");
    }

    @Test
    void threeLengthsAtOnceAreTiedIntoTwoVoices() {
        var middle = Place.of(2, 5);
        var bar =
                Rhythms.bar(Meter.COMMON, List.of(note("0", "1", A3), note("0", "1/2", middle), note("0", "1/4", G5)));
        assertThat(bar.voices()).hasSize(2);
        assertThat(bar.voices().stream().map(Rhythms::shapes)).containsExactly("4~4 r2", "1");
    }

    @Test
    void notesThatMeetButDoNotOverlapStayInOneVoice() {
        assertThat(voices(note("0", "1/4", A3), note("1/4", "1/4", Place.dead(1)), note("1/2", "1/2", G5)))
                .containsExactly("4 4 2");
    }

    /** What a ringing note sounds past its written length needs no voice. */
    @Test
    void ringingNotesAreWrittenAtTheirTypedLength() {
        var ringing = note("0", "1/4", A3).withOrnaments(Ornaments.NONE.with(Mark.RING));
        assertThat(voices(ringing, note("1/4", "1/4", G5), note("1/2", "1/2", G5)))
                .containsExactly("4 4 2");
    }
}
