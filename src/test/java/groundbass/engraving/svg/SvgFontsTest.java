package groundbass.engraving.svg;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.engraving.mark.Align;
import groundbass.engraving.mark.Face;
import groundbass.engraving.mark.Point;
import groundbass.engraving.mark.Shape;
import java.util.Base64;
import java.util.regex.Pattern;
import org.apache.fontbox.ttf.TTFParser;
import org.apache.fontbox.ttf.TrueTypeFont;
import org.apache.pdfbox.io.RandomAccessReadBuffer;
import org.junit.jupiter.api.Test;

/** Fonts inside a drawing that stands alone. */
class SvgFontsTest {
    private static final Pattern FACE =
            Pattern.compile("@font-face\\{[^}]*font-weight:500;src:url\\(data:font/ttf;base64,([A-Za-z0-9+/=]+)\\)}");

    private static SvgFonts fonts(String text) {
        var fonts = new SvgFonts();
        fonts.show(new Shape.Run(text, Face.MEDIUM, 2, new Point(0, 0), Align.START));
        return fonts;
    }

    private static TrueTypeFont font(String text) throws Exception {
        var face = FACE.matcher(fonts(text).style());
        assertThat(face.find()).isTrue();
        var bytes = Base64.getDecoder().decode(face.group(1));
        return new TTFParser().parse(new RandomAccessReadBuffer(bytes));
    }

    @Test
    void theFontHasTheCharactersThatAreShownAndNoOthers() throws Exception {
        try (var font = font("35")) {
            assertThat(font.getUnicodeCmapLookup().getGlyphId('3')).isPositive();
            assertThat(font.getUnicodeCmapLookup().getGlyphId('5')).isPositive();
            assertThat(font.getUnicodeCmapLookup().getGlyphId('4')).isZero();
        }
    }

    /** rule: tab-figures: lining figures stand on the baseline; the family's default 3, 5 and 9 hang below it. */
    @Test
    void figuresStandOnTheBaseline() throws Exception {
        try (var font = font("359")) {
            for (char figure : "359".toCharArray()) {
                var glyph = font.getGlyph().getGlyph(font.getUnicodeCmapLookup().getGlyphId(figure));
                assertThat(glyph.getYMinimum() / (double) font.getUnitsPerEm()).isGreaterThan(-0.05);
            }
        }
    }

    @Test
    void theSameTextGivesTheSameBytes() {
        assertThat(fonts("53").style()).isEqualTo(fonts("35").style());
    }
}
