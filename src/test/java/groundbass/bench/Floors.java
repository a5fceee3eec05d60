package groundbass.bench;

import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import javax.sound.midi.MidiSystem;
import javax.sound.midi.Sequence;
import org.apache.fontbox.ttf.TTFParser;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.apache.pdfbox.io.RandomAccessReadBuffer;
import org.apache.pdfbox.pdmodel.PDDocument;
import org.apache.pdfbox.pdmodel.PDPage;
import org.apache.pdfbox.pdmodel.PDPageContentStream;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.pdmodel.font.PDType0Font;

/** What the libraries alone need for about as much output. */
final class Floors {
    private static final int FILLS = 400;
    private static final int RUNS = 200;
    private static final TrueTypeFont FONT = font();

    private Floors() {}

    /** A page of A4 with 400 filled shapes and 200 runs of text, its font parsed once and embedded in part. */
    static byte[] pdf() throws IOException {
        var out = new ByteArrayOutputStream();
        try (var document = new PDDocument()) {
            var page = new PDPage(PDRectangle.A4);
            document.addPage(page);
            var font = PDType0Font.load(document, FONT, true);
            try (var content = new PDPageContentStream(document, page)) {
                for (int i = 0; i < FILLS; i++) {
                    content.moveTo(20 + i % 40 * 10, 40 + i / 40 * 50);
                    content.curveTo(25 + i % 40 * 10, 60, 30 + i, 70, 35, 80 + i);
                    content.lineTo(40 + i, 90);
                    content.fill();
                }
                for (int i = 0; i < RUNS; i++) {
                    content.beginText();
                    content.setFont(font, 9);
                    content.newLineAtOffset(20 + i % 10 * 50, 40 + i / 10 * 35);
                    content.showText("bar " + i);
                    content.endText();
                }
            }
            document.save(out);
        }
        return out.toByteArray();
    }

    static Sequence sequence(byte[] midi) throws Exception {
        return MidiSystem.getSequence(new ByteArrayInputStream(midi));
    }

    /** The JDK's own writer on a sequence that is ready. */
    static byte[] midi(Sequence sequence) throws IOException {
        var out = new ByteArrayOutputStream();
        MidiSystem.write(sequence, 1, out);
        return out.toByteArray();
    }

    private static TrueTypeFont font() {
        try (var in = Floors.class.getResourceAsStream("/fonts/ttf/AlegreyaSans/AlegreyaSans-Regular.ttf")) {
            return new TTFParser().parse(new RandomAccessReadBuffer(in.readAllBytes()));
        } catch (IOException e) {
            throw new IllegalStateException(e);
        }
    }
}
