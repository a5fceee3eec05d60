package groundbass.musicxml;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.linetext.LineText;
import groundbass.performance.Lines;
import groundbass.score.Bar;
import groundbass.score.Credits;
import groundbass.score.Fraction;
import groundbass.score.Header;
import groundbass.score.Line;
import groundbass.score.Meter;
import groundbass.score.Place;
import groundbass.score.Technique;
import groundbass.score.Tuning;
import groundbass.score.Tuning.OpenString;
import groundbass.theory.Letter;
import groundbass.theory.Pitch;
import groundbass.writing.Writing;
import java.io.ByteArrayInputStream;
import java.nio.charset.StandardCharsets;
import java.util.Collections;
import java.util.List;
import javax.xml.parsers.DocumentBuilderFactory;
import javax.xml.xpath.XPathFactory;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.w3c.dom.Document;

/** What stands around the notes, asked by XPath; names and values are those of MusicXML 4.0. */
class MusicXmlFileTest {
    private static final String MEASURE = "/score-partwise/part/measure";

    private static Line line(String text) {
        var reading = LineText.read("a.line", text);
        assertThat(reading.problems()).isEmpty();
        return reading.line();
    }

    private static byte[] file(String text) {
        return MusicXmlFile.of(line(text));
    }

    private static Document read(byte[] file) {
        try {
            assertThat(MusicXmlSchema.fault(file)).isEmpty();
            var factory = DocumentBuilderFactory.newDefaultInstance();
            factory.setFeature("http://apache.org/xml/features/disallow-doctype-decl", true);
            return factory.newDocumentBuilder().parse(new ByteArrayInputStream(file));
        } catch (Exception broken) {
            throw new AssertionError(broken);
        }
    }

    private static String ask(byte[] file, String path) {
        try {
            return XPathFactory.newDefaultInstance().newXPath().evaluate(path, read(file));
        } catch (Exception wrong) {
            throw new AssertionError(wrong);
        }
    }

    private static String ask(String text, String path) {
        return ask(file(text), path);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "</work-title><script>alert(1)</script>",
                "]]> & <!ENTITY x SYSTEM \"file:///etc/passwd\"> &x; 'q'",
                "\uD83C\uDFB8 Gitarre \u00DF \u0416 \uFFFD",
                "<?xml version=\"1.0\"?><!DOCTYPE a>",
            })
    void whatPeopleTypeStaysText(String typed) {
        var credits = new Credits(typed, typed, typed, typed, typed);
        var file = MusicXmlFile.of(Writing.of(line("bar 1\n1-4 E0\n")), credits);
        for (String path : List.of("//work-title", "//creator[1]", "//creator[2]", "//rights", "//source")) {
            assertThat(ask(file, path)).isEqualTo(typed);
        }
        assertThat(ask(file, "count(//script)")).isEqualTo("0");
    }

    /** XML 1.0, production 2: no such character may stand in a document, not even escaped. */
    @Test
    void charactersThatNoDocumentMayHoldAreReplaced() {
        var credits = new Credits("a\u0001b\uFFFEc\uD800d", "", "", "", "");
        var file = MusicXmlFile.of(Writing.of(line("bar 1\n1-4 E0\n")), credits);
        assertThat(ask(file, "//work-title")).isEqualTo("a\uFFFDb\uFFFDc\uFFFDd");
    }

    @Test
    void wordsOfALineStayText() {
        String text = "title <b>Low</b> & high\nsection \"<i>\"\nbar 1\n1-4 E0 \"<&>\"\n";
        assertThat(ask(text, "//work-title")).isEqualTo("<b>Low</b> & high");
        assertThat(ask(text, MEASURE + "//words")).isEqualTo("<&>");
    }

    @Test
    void noDocumentTypeIsNamed() {
        assertThat(new String(file("bar 1\n1-4 E0\n"), StandardCharsets.UTF_8))
                .startsWith("<?xml version=\"1.0\" encoding=\"UTF-8\"?>")
                .doesNotContain("DOCTYPE");
    }

    @Test
    void theSameLineGivesTheSameBytes() {
        assertThat(file("bar 1\n1-4 E0\n")).isEqualTo(file("bar 1\n1-4 E0\n"));
    }

    @Test
    void theTempoCountsItsBeat() {
        // a dotted quarter at 80 is a quarter at 120 (rule: tempo-counts-beats)
        String text = "meter 6/8\ntempo 80\nbar 1\n1-6 E0\n";
        assertThat(ask(text, "//metronome/beat-unit")).isEqualTo("quarter");
        assertThat(ask(text, "count(//metronome/beat-unit-dot)")).isEqualTo("1");
        assertThat(ask(text, "//metronome/per-minute")).isEqualTo("80");
        assertThat(ask(text, "//sound/@tempo")).isEqualTo("120");
    }

    @Test
    void swingIsSaidAndCanBePlayed() {
        String text = "feel swing 16ths 3:2 half-time\nbar 1\n1-4 E0\n";
        assertThat(ask(text, "//sound/swing/first")).isEqualTo("3");
        assertThat(ask(text, "//sound/swing/second")).isEqualTo("2");
        assertThat(ask(text, "//sound/swing/swing-type")).isEqualTo("16th");
        assertThat(ask(text, "//direction-type/words")).isEqualTo("Swing sixteenths 3:2, Half-time feel");
    }

    @Test
    void aPickupHasNumberZero() {
        String text = "bar 0\n4 E0\nbar 1\n1-4 E0\n";
        assertThat(ask(text, MEASURE + "[1]/@number")).isEqualTo("0");
        assertThat(ask(text, MEASURE + "[1]/@implicit")).isEqualTo("yes");
        assertThat(ask(text, MEASURE + "[2]/@number")).isEqualTo("1");
    }

    @Test
    void repeatsAndEndings() {
        String text = """
                repeat start
                bar 1
                1-4 E0
                ending 1-2
                bar 2
                1-4 E0
                ending end
                repeat end
                ending 3
                bar 3
                1-4 E0
                ending end
                """;
        assertThat(ask(text, MEASURE + "[1]/barline[@location='left']/repeat/@direction"))
                .isEqualTo("forward");
        assertThat(ask(text, MEASURE + "[2]/barline[@location='left']/ending[@type='start']/@number"))
                .isEqualTo("1, 2");
        assertThat(ask(text, MEASURE + "[2]/barline[@location='left']/ending")).isEqualTo("1-2.");
        assertThat(ask(text, MEASURE + "[2]/barline[@location='right']/repeat/@direction"))
                .isEqualTo("backward");
        assertThat(ask(text, MEASURE + "[3]/barline[@location='right']/ending/@type"))
                .isEqualTo("discontinue");
    }

    @Test
    void stringsAreTunedFromTheLowestLine() {
        // scientific octaves: the low B of five strings is B0
        String text = "strings B E A D G\nbar 1\n1-4 E0\n";
        assertThat(ask(text, "//staff-details/staff-lines")).isEqualTo("5");
        assertThat(ask(text, "//staff-tuning[@line='1']/tuning-step")).isEqualTo("B");
        assertThat(ask(text, "//staff-tuning[@line='1']/tuning-octave")).isEqualTo("0");
        assertThat(ask(text, "//staff-tuning[@line='5']/tuning-step")).isEqualTo("G");
        assertThat(ask(text, "//staff-details/staff-type")).isEqualTo("alternate");
    }

    @Test
    void groupsOfAMetreAreASumWhereTheyAreNotTheUsualOnes() {
        assertThat(ask("meter 7/8\nbar 1\n1-7 E0\n", "//time[1]/beats")).isEqualTo("7");
        assertThat(ask("meter 7/8 (3+2+2)\nbar 1\n1-7 E0\n", "//time[1]/beats")).isEqualTo("3+2+2");
    }

    @Test
    void aWordBetweenNotesStandsAtItsMoment() {
        // the half note begins at 3; a chord at 4 lies a quarter behind it
        String text = "bar 1 over C, Am at 4\n1-2 E0\n3-4 E3\n";
        assertThat(ask(text, "//harmony[2]/root/root-step")).isEqualTo("A");
        assertThat(ask(text, "//harmony[2]/offset * 4 div //divisions")).isEqualTo("4");
    }

    @Test
    void aChordHasRootKindTextAndBass() {
        String text = "bar 1 over F#m7b5/Bb, N.C. at 3\n1-4 E0\n";
        assertThat(ask(text, "//harmony[1]/root/root-step")).isEqualTo("F");
        assertThat(ask(text, "//harmony[1]/root/root-alter")).isEqualTo("1");
        assertThat(ask(text, "//harmony[1]/kind")).isEqualTo("half-diminished");
        assertThat(ask(text, "//harmony[1]/kind/@text")).isEqualTo("m7b5");
        assertThat(ask(text, "//harmony[1]/bass/bass-step")).isEqualTo("B");
        assertThat(ask(text, "//harmony[1]/bass/bass-alter")).isEqualTo("-1");
        assertThat(ask(text, "//harmony[2]/kind")).isEqualTo("none");
        assertThat(ask(text, "//harmony[2]/kind/@text")).isEqualTo("N.C.");
    }

    @Test
    void loudnessHairpinsAndSectionsAreDirections() {
        String text = "section A\nbar 1\n1-2 E0 p cresc\n3-4 E3 f\nsection Out\nbar 2\n1-4 E0\n";
        assertThat(ask(text, "name(//dynamics[1]/*)")).isEqualTo("p");
        assertThat(ask(text, "//wedge[1]/@type")).isEqualTo("crescendo");
        assertThat(ask(text, "count(//wedge[@type='stop'])")).isEqualTo("1");
        assertThat(ask(text, MEASURE + "[1]//rehearsal")).isEqualTo("A");
        assertThat(ask(text, MEASURE + "[1]//rehearsal/@enclosure")).isEqualTo("square");
        assertThat(ask(text, MEASURE + "[2]//rehearsal/@enclosure")).isEqualTo("none");
    }

    @Test
    void aTempoThatFellHasArrivedInTheNextBar() {
        String text = "tempo 100\nslowing to 60\nbar 1\n1-4 E0\nbar 2\n1-4 E0\n";
        assertThat(ask(text, MEASURE + "[1]//words")).isEqualTo("slowing to 60");
        assertThat(ask(text, MEASURE + "[2]/sound/@tempo")).isEqualTo("60");
    }

    @Test
    void keysAreSignaturesWithTheirModes() {
        String text = "key A dorian\nbar 1\n1-4 E0\nkey Eb major\nbar 2\n1-4 E0\n";
        assertThat(ask(text, MEASURE + "[1]//key[1]/fifths")).isEqualTo("1");
        assertThat(ask(text, MEASURE + "[1]//key[1]/mode")).isEqualTo("dorian");
        assertThat(ask(text, MEASURE + "[2]//key[1]/fifths")).isEqualTo("-3");
        assertThat(ask(text, MEASURE + "[1]/barline[@location='right']/bar-style"))
                .isEqualTo("light-light");
        assertThat(ask(text, MEASURE + "[2]/barline[@location='right']/bar-style"))
                .isEqualTo("light-heavy");
    }

    /** All that the score can hold and the format cannot: octaves beyond its own, numbers of slurs beyond sixteen. */
    @Test
    void whatTheFormatCannotHoldIsBent() {
        var strings = Collections.nCopies(Tuning.MOST_STRINGS, OpenString.of(Pitch.of(Letter.C, Pitch.LOWEST_OCTAVE)));
        var low = Header.PLAIN.with(new Tuning(strings));
        var bar = Bar.of(
                Meter.COMMON, List.of(Lines.note(Fraction.ZERO, Fraction.ONE, Place.of(12, 0), Technique.FINGER)));
        assertThat(ask(MusicXmlFile.of(new Line(low, List.of(bar))), "//staff-tuning[1]/tuning-octave"))
                .isEqualTo("0");
    }
}
