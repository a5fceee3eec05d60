package groundbass.braille;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.score.Meter;
import groundbass.theory.Key;
import groundbass.theory.Letter;
import groundbass.theory.Mode;
import groundbass.theory.NoteName;
import groundbass.theory.Pitch;
import groundbass.writing.Head.Sign;
import groundbass.writing.NoteValue;
import groundbass.writing.NoteValue.Base;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The tables of the New International Manual of Braille Music Notation (NIM 1996), sign by sign. */
class BrailleSignsTest {
    private static String dots(Cells cells) {
        return cells.patterns()
                .chars()
                .mapToObj(cell -> IntStream.rangeClosed(1, 6)
                        .filter(dot -> (cell - 0x2800 >> dot - 1 & 1) == 1)
                        .mapToObj(String::valueOf)
                        .collect(Collectors.joining()))
                .collect(Collectors.joining(" "));
    }

    /** NIM 1996, table 1 A and 1-1: the letters d to j without, with 3 and 6, with 3, with 6. rule: braille-note-values */
    @ParameterizedTest
    @CsvSource({"C, 145", "D, 15", "E, 124", "F, 1245", "G, 125", "A, 24", "B, 245"})
    void everyNoteInEveryValue(Letter letter, String eighth) {
        for (var base : Base.values()) {
            boolean three = List.of(Base.WHOLE, Base.SIXTEENTH, Base.HALF, Base.THIRTY_SECOND)
                    .contains(base);
            boolean six = List.of(Base.WHOLE, Base.SIXTEENTH, Base.QUARTER, Base.SIXTY_FOURTH)
                    .contains(base);
            String expected = Stream.of(eighth.split(""), new String[] {three ? "3" : "", six ? "6" : ""})
                    .flatMap(Stream::of)
                    .sorted()
                    .collect(Collectors.joining());
            assertThat(dots(BrailleSigns.note(letter, NoteValue.of(base)))).isEqualTo(expected);
            assertThat(dots(BrailleSigns.note(letter, NoteValue.dotted(base)))).isEqualTo(expected + " 3");
        }
    }

    /** NIM 1996, table 1 A: rests. */
    @Test
    void rests() {
        assertThat(Stream.of(Base.values()).map(base -> dots(BrailleSigns.rest(NoteValue.of(base)))))
                .containsExactly("134", "136", "1236", "1346", "134", "136", "1236");
    }

    /** NIM 1996, table 1 B: seven octaves, and what is below and above them. */
    @Test
    void octaves() {
        assertThat(IntStream.rangeClosed(0, 8).mapToObj(octave -> dots(BrailleSigns.octave(octave))))
                .containsExactly("4 4", "4", "45", "456", "5", "46", "56", "6", "6 6");
    }

    /** NIM 1996, table 3 A. */
    @Test
    void accidentals() {
        assertThat(Stream.of(Sign.values()).map(sign -> dots(BrailleSigns.accidental(sign))))
                .containsExactly("126 126", "126", "16", "146", "146 146");
    }

    /** NIM 1996, table 5 A, and NLS, Braille Music Basics: Intervals, 2023. rule: braille-intervals */
    @Test
    void intervals() {
        assertThat(IntStream.rangeClosed(1, 7).mapToObj(steps -> dots(BrailleSigns.interval(steps))))
                .containsExactly("34", "346", "3456", "35", "356", "25", "36");
        assertThat(BrailleSigns.interval(8)).isEqualTo(BrailleSigns.interval(1));
    }

    /** NIM 1996, table 17 A. rule: braille-string-signs */
    @Test
    void strings() {
        assertThat(IntStream.rangeClosed(1, 7)
                        .mapToObj(string ->
                                BrailleSigns.string(string).orElseThrow().ascii()))
                .containsExactly("%A", "%B", "%L", "%1", "%K", "%2", "%'");
        assertThat(BrailleSigns.string(8)).isEmpty();
    }

    /** NIM 1996, table 17 B, and its way of counting gone on with from the thirteenth on. rule: braille-fret-signs */
    @Test
    void frets() {
        assertThat(IntStream.rangeClosed(1, 12)
                        .mapToObj(fret -> BrailleSigns.fret(fret).ascii()))
                .containsExactly(">>", ">/", ">+", ">#", ">9", ">0", ",>3", ">-", ">-/", ">-+", ">-#", ">-9");
        assertThat(BrailleSigns.fret(15).ascii()).isEqualTo(">--");
        assertThat(IntStream.rangeClosed(1, 36).mapToObj(BrailleSigns::fret)).doesNotHaveDuplicates();
    }

    /** NIM 1996, table 8 A. */
    @Test
    void fingers() {
        assertThat(IntStream.rangeClosed(1, 4).mapToObj(finger -> dots(BrailleSigns.finger(finger))))
                .containsExactly("1", "12", "123", "2");
    }

    /** NIM 1996, 3-4, 3-6 and example 3-8: one sharp and three-four time; four flats and four-four time. */
    @Test
    void signatures() {
        var g = new Key(NoteName.of(Letter.G), Mode.MAJOR);
        var aFlat = new Key(new NoteName(Letter.A, -1), Mode.MAJOR);
        assertThat(BrailleSigns.key(g).plus(BrailleSigns.time(Meter.of(3, 4))).ascii())
                .isEqualTo("%#C4");
        assertThat(BrailleSigns.key(aFlat).plus(BrailleSigns.time(Meter.COMMON)).ascii())
                .isEqualTo("#D<#D4");
        assertThat(BrailleSigns.time(Meter.of(12, 8)).ascii()).isEqualTo("#AB8");
    }

    /** rule: braille-octave-marks */
    @ParameterizedTest
    @CsvSource({
        "C3, E3, false",
        "C3, A2, false",
        "B2, D3, false",
        "C3, F3, false",
        "C3, G3, false",
        "G3, C4, true",
        "C3, G2, true",
        "C3, A3, true",
        "A3, C3, true",
        "C3, C4, true",
        "C3, C3, false"
    })
    void aMarkByTheStepBefore(String from, String to, boolean marked) {
        var melody = new Melody();
        assertThat(melody.needsMark(pitch(from))).isTrue();
        melody.goesTo(pitch(from));
        assertThat(melody.needsMark(pitch(to))).isEqualTo(marked);
    }

    private static Pitch pitch(String text) {
        return Pitch.of(Letter.valueOf(text.substring(0, 1)), text.charAt(1) - '0');
    }

    /** Every pattern of six dots has a character of its own, and it leads back to it. */
    @Test
    void asciiBraille() {
        var all = IntStream.range(0x2800, 0x2840)
                .mapToObj(cell -> String.valueOf((char) cell))
                .collect(Collectors.joining());
        String ascii = new Cells(all).ascii();
        assertThat(ascii.chars().distinct().count()).isEqualTo(64);
        assertThat(ascii.chars()).allMatch(each -> each >= 0x20 && each < 0x60);
        assertThat(Cells.of(ascii).patterns()).isEqualTo(all);
    }
}
