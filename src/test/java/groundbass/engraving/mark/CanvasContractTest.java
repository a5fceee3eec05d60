package groundbass.engraving.mark;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.engraving.mark.Group.Role;
import groundbass.engraving.pdf.SheetMeta;
import groundbass.engraving.pdf.SheetPdf;
import groundbass.engraving.png.SheetPng;
import groundbass.engraving.sheet.Sheet;
import groundbass.engraving.svg.SheetSvg;
import groundbass.score.Passage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.time.Instant;
import java.util.ArrayList;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;

/** Every canvas takes every primitive in every kind of group. */
public class CanvasContractTest {
    public static final Function<Passage, String> WORDS =
            passage -> "Music from bar " + passage.from().bar();

    private static final Passage BAR = Passage.bar(1);

    /** One part for each role, with every shape, glyph and face in it. */
    private static Page everything() {
        var parts = new ArrayList<Page.Part>();
        for (var role : EnumSet.complementOf(EnumSet.of(Role.EVENT))) {
            parts.add(new Page.Part(new Group(role, Optional.of(BAR), new Box(0, 0, 60, 60)), shapes(role)));
        }
        return new Page(100, 100, 1.75, parts);
    }

    private static Shape arch() {
        return new Shape.Curve(new Point(2, 5), new Point(4, 4), new Point(7, 4), new Point(9, 5), 0.1, 0.22);
    }

    private static List<Mark> shapes(Role role) {
        var marks = new ArrayList<Mark>();
        marks.add(Mark.free(Kind.STAFF_LINE, new Shape.Rect(new Box(1, 1, 20, 1.13))));
        marks.add(Mark.of(Kind.SLIDE, BAR, new Shape.Stroke(new Point(1, 2), new Point(5, 4), 0.16)));
        marks.add(Mark.of(
                Kind.BEAM, BAR, new Shape.Polygon(List.of(new Point(1, 1), new Point(4, 1.5), new Point(4, 2)))));
        marks.add(Mark.of(Kind.TIE, BAR, arch()));
        for (var glyph : Glyph.values()) {
            marks.add(Mark.of(Kind.HEAD, BAR, new Shape.Sign(glyph, new Point(10, 10), glyph.ordinal() % 2 + 0.5)));
        }
        for (var face : Face.values()) {
            for (var align : Align.values()) {
                var at = new Point(30, 20);
                marks.add(Mark.free(Kind.TEXT, new Shape.Run("a<b> \"&\" \u0001 \u266F 12", face, 2, at, align)));
            }
        }
        if (role == Role.LINK) {
            var link = Optional.of("https://example.org/e/1?a=b&c=\"d\"");
            var at = new Point(3, 3);
            marks.add(Mark.free(Kind.TEXT, new Shape.Run("episode", Face.REGULAR, 2, at, Align.START, link)));
        }
        return marks;
    }

    @Test
    void theRecordingCanvasTakesEverything() {
        var canvas = new RecordingCanvas();
        everything().drawOn(canvas);
        assertThat(canvas.lines()).hasSizeGreaterThan(6 * Glyph.values().length);
    }

    @Test
    void svgIsWellFormedAndHasNeitherStyleNorScript() throws Exception {
        var svg = SheetSvg.of(everything(), "s", "en", "A <title>", "In words & signs");
        var document = javax.xml.parsers.DocumentBuilderFactory.newInstance()
                .newDocumentBuilder()
                .parse(new org.xml.sax.InputSource(new java.io.StringReader(svg)));
        assertThat(document.getElementsByTagName("symbol").getLength()).isEqualTo(Glyph.values().length);
        assertThat(document.getElementsByTagName("a").getLength()).isEqualTo(1);
        assertThat(document.getElementsByTagName("style").getLength()).isZero();
        assertThat(svg).doesNotContain(" style=", "<script", "onclick", "<b>");
    }

    @Test
    void aPictureTakesEverything() throws IOException {
        var picture = javax.imageio.ImageIO.read(
                new java.io.ByteArrayInputStream(SheetPng.of(everything(), 10, SheetPng.Ink.DARK)));
        assertThat(picture.getColorModel().hasAlpha()).isTrue();
    }

    @Test
    void pdfOpensAndGivesItsTextBack() throws IOException {
        var out = new ByteArrayOutputStream();
        SheetPdf.write(new Sheet(List.of(everything()), WORDS), meta(), out);
        try (var document = Loader.loadPDF(out.toByteArray())) {
            assertThat(new PDFTextStripper().getText(document)).contains("a<b> \"&\"", "12", "episode");
            assertThat(document.getPage(0).getAnnotations()).hasSize(1);
        }
    }

    public static SheetMeta meta() {
        return new SheetMeta("Lantern Street", "Quay Studio", "en", Instant.parse("2026-11-25T10:00:00Z"), 7);
    }
}
