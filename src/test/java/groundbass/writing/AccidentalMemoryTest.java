package groundbass.writing;

import static groundbass.writing.Rhythms.header;
import static groundbass.writing.Rhythms.note;
import static org.assertj.core.api.Assertions.assertThat;

import groundbass.score.Bar;
import groundbass.score.Changes;
import groundbass.score.Header;
import groundbass.score.Line;
import groundbass.score.Meter;
import groundbass.score.Note;
import groundbass.score.Ornaments;
import groundbass.score.Place;
import groundbass.score.Tuning;
import groundbass.theory.Key;
import groundbass.theory.Mode;
import groundbass.theory.NoteName;
import groundbass.writing.Element.Chord;
import groundbass.writing.Head.Sign;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** Which signs are printed, worked out by hand from the rules named. */
class AccidentalMemoryTest {
    private static final Header C_MAJOR = Header.PLAIN;
    private static final Place C2 = Place.of(3, 3);
    private static final Place C_SHARP2 = Place.of(3, 4);
    private static final Place C_SHARP3 = Place.of(1, 6);
    private static final Place F_SHARP1 = Place.of(4, 2);
    private static final Place F1 = Place.of(4, 1);

    /** Quarters, all C sharps spelled as such. */
    private static Bar bar(Place... places) {
        return Bar.of(Meter.COMMON, quarters(places));
    }

    private static List<Note> quarters(Place... places) {
        return IntStream.range(0, places.length)
                .mapToObj(i -> sharp(note(i + "/4", "1/4", places[i])))
                .toList();
    }

    private static Note sharp(Note note) {
        var name = note.place().equals(C_SHARP2) || note.place().equals(C_SHARP3) ? "C#" : "F#";
        boolean isSharp = List.of(C_SHARP2, C_SHARP3, F_SHARP1).contains(note.place());
        return isSharp
                ? note.withOrnaments(
                        Ornaments.NONE.withSpelling(NoteName.parse(name).orElseThrow()))
                : note;
    }

    /** Bars between strokes; {@code #}, {@code n}, {@code b}, in brackets where it only reminds, {@code .} for none. */
    private static String signs(Header header, Bar... bars) {
        return Writing.of(new Line(header, Arrays.asList(bars))).bars().stream()
                .map(bar -> bar.voices().get(0).elements().stream()
                        .filter(Chord.class::isInstance)
                        .flatMap(element -> ((Chord) element).heads().stream())
                        .map(AccidentalMemoryTest::sign)
                        .collect(Collectors.joining(" ")))
                .collect(Collectors.joining(" | "));
    }

    private static String sign(Head head) {
        return head.accidental()
                .map(it -> it.courtesy() ? "(" + text(it.sign()) + ")" : text(it.sign()))
                .orElse(".");
    }

    private static String text(Sign sign) {
        return switch (sign) {
            case DOUBLE_FLAT -> "bb";
            case FLAT -> "b";
            case NATURAL -> "n";
            case SHARP -> "#";
            case DOUBLE_SHARP -> "##";
        };
    }

    /** rule: accidental-for-its-bar: C sharp, then C in one bar. */
    @Test
    void aNaturalCancelsASharpInItsBar() {
        assertThat(signs(C_MAJOR, bar(C_SHARP2, C2))).isEqualTo("# n");
    }

    /** rule: accidental-for-its-bar. */
    @Test
    void aSignHoldsForItsBar() {
        assertThat(signs(C_MAJOR, bar(C_SHARP2, C_SHARP2), bar(C_SHARP2))).isEqualTo("# . | #");
    }

    /** rule: courtesy-accidental: for one bar only. */
    @Test
    void theBarLineCancelsAndACourtesySignSaysSoOnce() {
        assertThat(signs(C_MAJOR, bar(C_SHARP2), bar(C2, C2), bar(C2))).isEqualTo("# | (n) . | .");
    }

    /** rule: accidental-for-its-bar: the key has signed it. */
    @Test
    void theSignatureNeedsNoSign() {
        assertThat(signs(header("G", Mode.MAJOR), bar(F_SHARP1))).isEqualTo(".");
        assertThat(signs(header("G", Mode.MAJOR), bar(F1))).isEqualTo("n");
    }

    /** rule: accidental-per-octave, courtesy-accidental: in another octave too. */
    @Test
    void anotherOctaveNeedsItsOwnSign() {
        assertThat(signs(C_MAJOR, bar(C_SHARP2, C_SHARP3), bar(C2))).isEqualTo("# # | (n)");
    }

    /** rule: accidental-over-tie: not repeated after a bar line for the tied note, needed anew by a later one. */
    @Test
    void aTieNeedsNoSignAndLeavesNone() {
        var held = sharp(note("0", "5/4", C_SHARP2));
        var struck = sharp(note("1/2", "1/4", C_SHARP2));
        assertThat(signs(C_MAJOR, Bar.of(Meter.COMMON, List.of(held)), Bar.of(Meter.COMMON, List.of(struck))))
                .isEqualTo("# | . #");
    }

    @Test
    void aNaturalAfterATiedSharpGetsACourtesySign() {
        var held = sharp(note("0", "5/4", C_SHARP2));
        assertThat(signs(
                        C_MAJOR,
                        Bar.of(Meter.COMMON, List.of(held)),
                        Bar.of(Meter.COMMON, List.of(note("1/2", "1/4", C2)))))
                .isEqualTo("# | . (n)");
    }

    /** rule: plain-sharp-after-double. */
    @Test
    void aPlainSharpCancelsADoubleSharp() {
        var doubleSharp = note("0", "1/4", Place.of(4, 3))
                .withOrnaments(Ornaments.NONE.withSpelling(NoteName.parse("F##").orElseThrow()));
        var sharp = sharp(note("1/4", "1/4", F_SHARP1));
        assertThat(signs(C_MAJOR, Bar.of(Meter.COMMON, List.of(doubleSharp, sharp))))
                .isEqualTo("## #");
    }

    /** rule: dead-note-no-accidental. */
    @Test
    void deadNotesTakeNoSign() {
        var flatTuned = C_MAJOR.with(Tuning.sounding("F#2", "C#2", "G#1", "D#1"));
        assertThat(signs(flatTuned, bar(Place.dead(1), Place.dead(2)))).isEqualTo(". .");
    }

    @Test
    void aNewKeySignatureDecidesFromItsBarOn() {
        var gMajor = new Key(NoteName.parse("G").orElseThrow(), Mode.MAJOR);
        assertThat(signs(C_MAJOR, bar(F_SHARP1), bar(F_SHARP1, F1).with(Changes.NONE.with(gMajor))))
                .isEqualTo("# | . n");
    }

    /** rule: altered-unison: D flat and D at one moment both have signs, also where the flat was written before. */
    @Test
    void alteredUnisonsHaveBothTheirSigns() {
        var flat = note("0", "1/4", C_SHARP2)
                .withOrnaments(Ornaments.NONE.withSpelling(NoteName.parse("Db").orElseThrow()));
        var d = Place.of(2, 0);
        var bar = Bar.of(
                Meter.COMMON,
                List.of(
                        flat,
                        note("1/4", "1/4", C_SHARP2).withOrnaments(flat.ornaments()),
                        note("1/4", "1/4", d),
                        note("1/2", "1/4", d),
                        note("3/4", "1/4", d)));
        assertThat(signs(C_MAJOR, bar)).isEqualTo("b b n n .");
    }
}
