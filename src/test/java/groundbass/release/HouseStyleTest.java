package groundbass.release;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import groundbass.catalog.episode.RevisionId;
import groundbass.document.EpisodeDocument;
import groundbass.document.HouseStyle;
import groundbass.document.Level;
import groundbass.document.LineSource;
import groundbass.document.SheetAbbreviations;
import groundbass.document.SheetAids;
import groundbass.document.SheetAids.CountsRow;
import groundbass.document.SheetLetters;
import groundbass.document.SheetPaper;
import groundbass.lesson.Lesson;
import groundbass.lesson.Sheets;
import groundbass.linetext.LineText;
import groundbass.text.Messages;
import java.io.IOException;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;
import org.apache.pdfbox.Loader;
import org.apache.pdfbox.pdmodel.common.PDRectangle;
import org.apache.pdfbox.text.PDFTextStripper;
import org.junit.jupiter.api.Test;

class HouseStyleTest {
    private static final HouseStyle WRITTEN_OUT = HouseStyle.USUAL;
    private static final HouseStyle SIGNS = style(true, false);
    private static final HouseStyle RESTS_TOGETHER = style(false, true);

    private static HouseStyle style(boolean simile, boolean restsTogether) {
        return new HouseStyle(
                SheetLetters.parse("slap=S"),
                new SheetAbbreviations(simile, restsTogether),
                SheetPaper.A4,
                SheetAids.USUAL);
    }

    private static LessonFiles files(String line, HouseStyle style) {
        var document = EpisodeDocument.titled("Slack Water", Level.BEGINNER)
                .edit()
                .mainLine(new LineSource("", line))
                .done();
        return new LessonFiles(Lesson.of(document), spec(style));
    }

    private static BuildSpec spec(HouseStyle style) {
        return new BuildSpec(
                new RevisionId("abcdefgh23456789"),
                1,
                "Low Tide",
                3,
                "low-tide-03-slack-water",
                "https://lessons.example/e/k3v9",
                LocalDate.parse("2026-03-02"),
                style,
                BuildSpec.RENDERERS);
    }

    /** How often a fret number stands on the page with the music, which comes before the page with the words. */
    private static long frets(String fret, HouseStyle style) throws IOException {
        byte[] sheet = files("bar 1\n1 E17, E17\n2-4 rest\nbar 2 = bar 1\nbar 3 = bar 2\n", style)
                .steps()
                .get(0)
                .get()
                .bytes();
        try (var document = Loader.loadPDF(sheet)) {
            var text = new PDFTextStripper();
            text.setEndPage(1);
            return Pattern.compile("\\b" + fret + "\\b")
                    .matcher(text.getText(document))
                    .results()
                    .count();
        }
    }

    @Test // rule: simile-signs: a bar that repeats the one before may be a sign
    void aReleasePrintsRepeatedBarsAsTheSeriesHasThem() throws IOException {
        assertThat(frets("17", WRITTEN_OUT)).isEqualTo(6);
        assertThat(frets("17", SIGNS)).isEqualTo(2);
        assertThat(frets("17", RESTS_TOGETHER)).isEqualTo(6);
    }

    private static int pages(HouseStyle style) throws IOException {
        var silent = new StringBuilder("bar 1\n1-4 E0\n");
        for (int bar = 2; bar <= 200; bar++) {
            silent.append("bar ").append(bar).append("\n1-4 rest\n");
        }
        byte[] sheet = files(silent.toString(), style).steps().get(0).get().bytes();
        try (var document = Loader.loadPDF(sheet)) {
            return document.getNumberOfPages();
        }
    }

    @Test
    void aReleasePrintsSilentBarsAsTheSeriesHasThem() throws IOException {
        assertThat(pages(RESTS_TOGETHER)).isLessThan(pages(WRITTEN_OUT));
        assertThat(pages(SIGNS)).isLessThanOrEqualTo(pages(WRITTEN_OUT));
    }

    @Test
    void picturesKeepEveryNoteSoThatItCanBeLit() {
        var sheets = new Sheets(Messages.of(Locale.ENGLISH));
        var line = LineText.read("bar 1\n1-4 E17\nbar 2 = bar 1\n").line();
        assertThat(Pattern.compile(">17<")
                        .matcher(sheets.with(SIGNS).svg(line, 110, "x-"))
                        .results())
                .hasSize(2);
    }

    /** ISO 216: A4 is 210 by 297 mm. ANSI/ASME Y14.1: size A is 8.5 by 11 inches of 72 points. */
    @Test
    void aReleaseIsPrintedOnThePaperOfTheSeries() throws IOException {
        var american = new HouseStyle(SheetLetters.USUAL, SheetAbbreviations.NONE, SheetPaper.LETTER, SheetAids.USUAL);
        assertThat(paper(american).getWidth()).isCloseTo(612, within(0.5f));
        assertThat(paper(american).getHeight()).isCloseTo(792, within(0.5f));
        assertThat(paper(WRITTEN_OUT).getWidth()).isCloseTo(210 / 25.4f * 72, within(0.5f));
        assertThat(BuildSpecJson.read(BuildSpecJson.write(spec(american)))).isEqualTo(spec(american));
    }

    private static PDRectangle paper(HouseStyle style) throws IOException {
        byte[] sheet = files("bar 1\n1-4 E17\n", style).steps().get(0).get().bytes();
        try (var document = Loader.loadPDF(sheet)) {
            return document.getPage(0).getMediaBox();
        }
    }

    /** rule: counts-row: a half note on 1 is waited out at 2; the line itself and its one exercise are such. */
    @Test
    void countsStandWhereTheSeriesWantsThem() throws IOException {
        assertThat(waitedOut(CountsRow.NONE)).isZero();
        assertThat(waitedOut(CountsRow.EXERCISES)).isEqualTo(1);
        assertThat(waitedOut(CountsRow.ALL)).isEqualTo(2);
    }

    private static long waitedOut(CountsRow counts) throws IOException {
        var halves = new LineSource("", "bar 1\n1-4 E3, E5\n");
        var document = EpisodeDocument.titled("Slack Water", Level.BEGINNER)
                .edit()
                .mainLine(halves)
                .exercises(List.of(halves))
                .done();
        var style = new HouseStyle(
                SheetLetters.USUAL, SheetAbbreviations.NONE, SheetPaper.A4, new SheetAids(counts, false));
        assertThat(BuildSpecJson.read(BuildSpecJson.write(spec(style)))).isEqualTo(spec(style));
        byte[] sheet = new LessonFiles(Lesson.of(document), spec(style))
                .steps()
                .get(0)
                .get()
                .bytes();
        try (var pdf = Loader.loadPDF(sheet)) {
            return Pattern.compile("\\(2\\)")
                    .matcher(new PDFTextStripper().getText(pdf))
                    .results()
                    .count();
        }
    }

    @Test
    void aStoredRecipeKeepsTheStyle() {
        for (var style : new HouseStyle[] {WRITTEN_OUT, SIGNS, RESTS_TOGETHER, style(true, true)}) {
            assertThat(BuildSpecJson.read(BuildSpecJson.write(spec(style)))).isEqualTo(spec(style));
        }
    }
}
