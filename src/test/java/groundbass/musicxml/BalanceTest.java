package groundbass.musicxml;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.score.Fraction;
import groundbass.score.RandomLines;
import java.io.ByteArrayInputStream;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import javax.xml.parsers.DocumentBuilderFactory;
import org.junit.jupiter.api.Test;
import org.w3c.dom.Document;
import org.w3c.dom.Element;

/** What begins in a document ends in it, and shapes last what they say; read off the bare elements. */
class BalanceTest {
    private static final List<String> PAIRED =
            List.of("slur", "slide", "hammer-on", "pull-off", "wavy-line", "wedge", "dashes", "tuplet");

    /** Shorter than anything that is written. */
    private static final Fraction GRACE = Fraction.of(1, 1_000_000);

    private static final Map<String, Fraction> SHAPES = Map.of(
            "whole", Fraction.ONE,
            "half", Fraction.of(1, 2),
            "quarter", Fraction.of(1, 4),
            "eighth", Fraction.of(1, 8),
            "16th", Fraction.of(1, 16),
            "32nd", Fraction.of(1, 32),
            "64th", Fraction.of(1, 64));

    private static List<Document> documents() throws Exception {
        var documents = new ArrayList<Document>();
        for (long seed = 1; seed <= SchemaTest.LINES; seed++) {
            documents.add(DocumentBuilderFactory.newDefaultInstance()
                    .newDocumentBuilder()
                    .parse(new ByteArrayInputStream(MusicXmlFile.of(RandomLines.line(seed)))));
        }
        return documents;
    }

    private static List<Element> elements(Document document, String name) {
        var found = document.getElementsByTagName(name);
        return IntStream.range(0, found.getLength())
                .mapToObj(i -> (Element) found.item(i))
                .toList();
    }

    private static String text(Element element, String name) {
        var found = element.getElementsByTagName(name);
        return found.getLength() == 0 ? "" : found.item(0).getTextContent();
    }

    /** Where something begins or ends: the order of the music, which need not be that of the document. */
    record End(Fraction at, boolean stop, String what) {}

    /** MusicXML 4.0, start-stop: both refer to the order of the music. */
    @Test
    void whatBeginsEnds() throws Exception {
        var ended = new HashMap<String, Integer>();
        for (var document : documents()) {
            var open = new HashSet<String>();
            for (var end : ends(document)) {
                assertThat(end.stop() ? open.remove(end.what()) : open.add(end.what()))
                        .as(end.what())
                        .isTrue();
                ended.merge(end.what().split(" ")[0], 1, Integer::sum);
            }
            assertThat(open).isEmpty();
        }
        assertThat(ended.keySet()).containsExactlyInAnyOrderElementsOf(PAIRED);
    }

    private static List<End> ends(Document document) {
        var ends = new ArrayList<End>();
        var start = Fraction.ZERO;
        long divisions = 1;
        for (var measure : elements(document, "measure")) {
            String own = text(measure, "divisions");
            divisions = own.isEmpty() ? divisions : Long.parseLong(own);
            var at = start;
            var onset = start;
            var children = measure.getChildNodes();
            for (int i = 0; i < children.getLength(); i++) {
                if (!(children.item(i) instanceof Element child)) {
                    continue;
                }
                var length = time(text(child, "duration"), divisions);
                boolean together = child.getElementsByTagName("chord").getLength() > 0;
                onset = together ? onset : at.plus(time(text(child, "offset"), divisions));
                for (String name : PAIRED) {
                    ends.addAll(ends(child, name, onset, length));
                }
                at = child.getTagName().equals("backup") ? at.minus(length) : together ? at : at.plus(length);
            }
            start = at;
        }
        return ends.stream()
                .sorted(Comparator.comparing(End::at).thenComparing(end -> !end.stop()))
                .toList();
    }

    /** Waves and tuplets last as long as their last note, graces come before it; each voice has tuplets of its own. */
    private static List<End> ends(Element child, String name, Fraction onset, Fraction length) {
        var found = child.getElementsByTagName(name);
        var ends = new ArrayList<End>();
        for (int i = 0; i < found.getLength(); i++) {
            var element = (Element) found.item(i);
            boolean stop = element.getAttribute("type").equals("stop");
            boolean after = stop && (name.equals("wavy-line") || name.equals("tuplet"));
            boolean before = child.getElementsByTagName("grace").getLength() > 0;
            String voice = name.equals("tuplet") ? text(child, "voice") : "";
            ends.add(new End(
                    after ? onset.plus(length) : before ? onset.minus(GRACE) : onset,
                    stop,
                    name + " " + element.getAttribute("number") + " " + voice));
        }
        return ends;
    }

    private static Fraction time(String duration, long divisions) {
        return duration.isEmpty() ? Fraction.ZERO : Fraction.of(Long.parseLong(duration), 4 * divisions);
    }

    /** MusicXML 4.0, beam: each level begins before it continues, and ends; hooks stand alone. */
    @Test
    void beamsBeginAndEndOnEachLevel() throws Exception {
        int ended = 0;
        for (var document : documents()) {
            var open = new HashSet<String>();
            for (var note : elements(document, "note")) {
                String voice = text(note, "voice");
                var beams = note.getElementsByTagName("beam");
                for (int i = 0; i < beams.getLength(); i++) {
                    String place = voice + "/" + ((Element) beams.item(i)).getAttribute("number");
                    switch (beams.item(i).getTextContent()) {
                        case "begin" -> assertThat(open.add(place)).isTrue();
                        case "continue" -> assertThat(open).contains(place);
                        case "end" -> {
                            assertThat(open.remove(place)).isTrue();
                            ended++;
                        }
                        default -> assertThat(open).doesNotContain(place);
                    }
                }
            }
            assertThat(open).isEmpty();
        }
        assertThat(ended).isGreaterThan(100);
    }

    /** A shape with its dots, squeezed as its tuplet says, lasts its duration (MusicXML 4.0, time-modification). */
    @Test
    void shapesLastTheirDuration() throws Exception {
        int squeezed = 0;
        for (var document : documents()) {
            long divisions = 1;
            for (var measure : elements(document, "measure")) {
                String own = text(measure, "divisions");
                divisions = own.isEmpty() ? divisions : Long.parseLong(own);
                var notes = measure.getElementsByTagName("note");
                for (int i = 0; i < notes.getLength(); i++) {
                    var note = (Element) notes.item(i);
                    if (text(note, "duration").isEmpty() || text(note, "type").isEmpty()) {
                        continue;
                    }
                    var lasts = Fraction.of(Long.parseLong(text(note, "duration")), 4 * divisions);
                    boolean tuplet = !text(note, "actual-notes").isEmpty();
                    assertThat(shape(note)).isEqualTo(lasts);
                    squeezed += tuplet ? 1 : 0;
                }
            }
        }
        assertThat(squeezed).isGreaterThan(100);
    }

    private static Fraction shape(Element note) {
        var length = SHAPES.get(text(note, "type"));
        int dots = note.getElementsByTagName("dot").getLength();
        var dotted = length.times(Fraction.of((1L << (dots + 1)) - 1, 1L << dots));
        if (text(note, "actual-notes").isEmpty()) {
            return dotted;
        }
        return dotted.times(
                Fraction.of(Long.parseLong(text(note, "normal-notes")), Long.parseLong(text(note, "actual-notes"))));
    }
}
