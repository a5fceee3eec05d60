package groundbass.engraving.sign;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import groundbass.engraving.mark.Glyph;
import groundbass.engraving.mark.Measures;
import groundbass.engraving.mark.MusicFont;
import groundbass.engraving.sign.staff.LongRestSigns;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.MethodSource;

/** What we draw with, beside what the font publishes of itself ({@code bravura.tsv}). */
class FontMetadataTest {
    private static Stream<List<String>> rows(String kind) {
        try (var in = Objects.requireNonNull(
                FontMetadataTest.class.getResourceAsStream("/groundbass/engraving/bravura.tsv"))) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8)
                    .lines()
                    .map(row -> List.of(row.split("\t")))
                    .filter(cells -> cells.get(0).equals(kind));
        } catch (IOException e) {
            throw new AssertionError(e);
        }
    }

    @Test // rule: font-thickness
    void linesHaveTheFontsThickness() {
        var published =
                rows("line").collect(Collectors.toMap(cells -> cells.get(1), cells -> Double.valueOf(cells.get(2))));
        var ours = Map.ofEntries(
                Map.entry("staffLineThickness", Measures.STAFF_LINE),
                Map.entry("stemThickness", Measures.STEM),
                Map.entry("beamThickness", Measures.BEAM),
                Map.entry("beamSpacing", Measures.BEAM_GAP),
                Map.entry("legerLineThickness", Measures.LEDGER),
                Map.entry("legerLineExtension", Measures.LEDGER_REACH),
                Map.entry("thinBarlineThickness", Measures.THIN_BARLINE),
                Map.entry("thickBarlineThickness", Measures.THICK_BARLINE),
                Map.entry("barlineSeparation", Measures.BARLINE_GAP),
                Map.entry("repeatBarlineDotSeparation", Measures.REPEAT_DOT_GAP),
                Map.entry("tupletBracketThickness", Measures.TUPLET_BRACKET),
                Map.entry("repeatEndingLineThickness", Measures.ENDING_LINE),
                Map.entry("tieEndpointThickness", Measures.CURVE_ENDS),
                Map.entry("slurEndpointThickness", Measures.CURVE_ENDS),
                Map.entry("tieMidpointThickness", Measures.CURVE_MIDDLE),
                Map.entry("slurMidpointThickness", Measures.CURVE_MIDDLE),
                Map.entry("hBarThickness", LongRestSigns.THICKNESS));
        assertThat(published).containsAllEntriesOf(ours);
    }

    static Stream<List<String>> glyphs() {
        return rows("glyph");
    }

    @ParameterizedTest // rule: font-outlines
    @MethodSource("glyphs")
    void outlinesHaveThePublishedBoxes(List<String> published) {
        int code = Integer.parseInt(published.get(2), 16);
        var glyph = Arrays.stream(Glyph.values())
                .filter(one -> one.codePoint() == code)
                .findFirst()
                .orElseThrow();
        var box = MusicFont.bravura().box(glyph);
        // the table has two digits; y grows downwards here
        assertThat(box.left()).isCloseTo(Double.parseDouble(published.get(3)), within(0.0051));
        assertThat(box.bottom()).isCloseTo(-Double.parseDouble(published.get(4)), within(0.0051));
        assertThat(box.right()).isCloseTo(Double.parseDouble(published.get(5)), within(0.0051));
        assertThat(box.top()).isCloseTo(-Double.parseDouble(published.get(6)), within(0.0051));
    }

    @ParameterizedTest // rule: glyph-codes
    @CsvSource({
        "HEAD_BLACK, noteheadBlack",
        "X_BLACK, noteheadXBlack",
        "DIAMOND_BLACK, noteheadDiamondBlack",
        "F_CLEF, fClef",
        "TAB_CLEF_FOUR, 4stringTabClef",
        "TAB_CLEF_SIX, 6stringTabClef",
        "DOWN_STROKE, stringsDownBow",
        "UP_STROKE, stringsUpBow",
        "REST_HALF, restHalf",
        "SHARP, accidentalSharp",
        "FLAT, accidentalFlat",
        "REPEAT_BAR, repeat1Bar"
    })
    void glyphsHaveTheirPublishedCodePoints(Glyph glyph, String name) {
        assertThat(rows("glyph").filter(cells -> cells.get(1).equals(name)).map(cells -> cells.get(2)))
                .containsExactly(Integer.toHexString(glyph.codePoint()).toUpperCase(java.util.Locale.ROOT));
    }

    @Test // rule: stem-side: of a black head the anchor of a stem going up is the right edge
    void aStemJoinsTheEdgeOfItsHead() {
        assertThat(MusicFont.bravura().box(Glyph.HEAD_BLACK).right()).isCloseTo(1.18, within(0.0051));
    }
}
