package groundbass.writing;

import static groundbass.writing.Rhythms.header;
import static groundbass.writing.Rhythms.note;
import static org.assertj.core.api.Assertions.assertThat;

import groundbass.score.Arrival;
import groundbass.score.Bar;
import groundbass.score.Harmonic;
import groundbass.score.Header;
import groundbass.score.Line;
import groundbass.score.Meter;
import groundbass.score.Note;
import groundbass.score.Ornaments;
import groundbass.score.Place;
import groundbass.theory.Mode;
import groundbass.theory.NoteName;
import java.util.List;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

/** Spelling by key and by what follows: rule of the engraving handbooks, from memory. */
class SpellingsTest {
    private static final Place E1 = Place.of(4, 0);
    private static final Place F1 = Place.of(4, 1);
    private static final Place F_SHARP1 = Place.of(4, 2);
    private static final Place G1 = Place.of(4, 3);

    private static String names(Header header, Note... notes) {
        return Spellings.of(new Line(header, List.of(Bar.of(Meter.COMMON, List.of(notes))))).get(0).stream()
                .map(spelled -> spelled.pitch().toString())
                .collect(Collectors.joining(" "));
    }

    @Test
    void outsideNotesAreSharpWhenTheyRiseAndFlatWhenTheyFall() {
        var a = note("0", "1/4", Place.of(4, 4));
        assertThat(names(Header.PLAIN, a, note("1/4", "1/4", Place.of(4, 5)))).isEqualTo("G#1 A1");
        assertThat(names(Header.PLAIN, a, note("1/4", "1/4", G1))).isEqualTo("Ab1 G1");
    }

    @Test
    void whatFollowsIsTheNextPitchThatDiffers() {
        var first = note("0", "1/4", Place.of(4, 4));
        var dead = note("1/4", "1/4", Place.dead(2));
        var again = note("1/2", "1/4", Place.of(4, 4));
        assertThat(names(Header.PLAIN, first, dead, again, note("3/4", "1/4", Place.of(4, 5))))
                .isEqualTo("G#1 D2 G#1 A1");
    }

    @Test
    void theKeysOwnNameComesFirst() {
        assertThat(names(header("G", Mode.MAJOR), note("0", "1/4", F_SHARP1), note("1/4", "1/4", F1)))
                .startsWith("F#1");
        assertThat(names(header("Db", Mode.MAJOR), note("0", "1/4", F_SHARP1), note("1/4", "1/4", G1)))
                .startsWith("Gb1");
    }

    @Test
    void aForcedNameIsPrinted() {
        var flat = note("0", "1/4", F_SHARP1)
                .withOrnaments(Ornaments.NONE.withSpelling(NoteName.parse("Gb").orElseThrow()));
        assertThat(names(Header.PLAIN, flat, note("1/4", "1/4", G1))).isEqualTo("Gb1 G1");
    }

    /** rule: harmonic-nodes: a natural harmonic over the open A string at fret 7 sounds E3. */
    @Test
    void harmonicsAreSpelledAsTheySound() {
        var harmonic = note("0", "1/4", Place.of(3, 7)).withOrnaments(Ornaments.NONE.with(Harmonic.NATURAL));
        assertThat(names(Header.PLAIN, harmonic)).isEqualTo("E3");
    }

    /** rule: bass-written-high: written an octave above what sounds. */
    @Test
    void bassPartsAreWrittenAnOctaveHigher() {
        var bar = Rhythms.bar(Meter.COMMON, List.of(note("0", "1/4", E1), note("1/4", "1/4", Place.of(1, 12))));
        assertThat(bar.voices().get(0).elements().stream()
                        .filter(Element.Chord.class::isInstance)
                        .map(element -> ((Element.Chord) element).heads().get(0).writtenPitch())
                        .map(String::valueOf))
                .containsExactly("E2", "G4");
    }

    /** rule: slurred-notes-names: a hammered or slid whole tone is a second, with a note before or a grace note. */
    @Test
    void aWholeToneUnderASlurIsASecond() {
        var cSharp = note("0", "1/4", Place.of(3, 4));
        var dSharp = note("1/4", "1/4", Place.of(3, 6)).with(Arrival.by(Arrival.Kind.HAMMER));
        var e = note("1/2", "1/2", Place.of(2, 2));
        assertThat(names(Header.PLAIN, cSharp, dSharp, e)).isEqualTo("C#2 D#2 E2");
        var graced = note("0", "1/2", Place.of(2, 6)).with(Arrival.from(Arrival.Kind.SLIDE, 4));
        var spelled = Spellings.of(new Line(Header.PLAIN, List.of(Bar.of(Meter.COMMON, List.of(graced)))))
                .get(0)
                .get(0);
        assertThat(spelled.grace().orElseThrow() + " " + spelled.pitch()).isIn("F#2 G#2", "Gb2 Ab2");
    }
}
