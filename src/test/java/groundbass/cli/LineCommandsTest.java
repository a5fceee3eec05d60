package groundbass.cli;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.Main;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import java.util.zip.ZipFile;
import javax.imageio.ImageIO;
import javax.sound.midi.MidiSystem;
import javax.xml.parsers.DocumentBuilderFactory;
import org.apache.pdfbox.Loader;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import picocli.CommandLine;

class LineCommandsTest {
    private static final String LINE = "title Slack Water\ntempo 60\n\nbar 1\n1-4 E0, E3\n";
    private static final Path SEED_DATA = Path.of("seed-data");

    @TempDir
    private Path folder;

    private Path line;
    private final StringWriter err = new StringWriter();

    @BeforeEach
    void writeALine() throws IOException {
        line = folder.resolve("slack.line");
        Files.writeString(line, LINE);
    }

    @Test
    void theVersionIsSaid() {
        var out = new StringWriter();
        var command = Main.commandLine(Map.of()).setOut(new PrintWriter(out, true));
        assertThat(command.execute("--version")).isZero();
        assertThat(out.toString()).matches("groundbass \\S.*\\R");
    }

    @Test
    void renderWritesSheetPictureAndMidi() throws Exception {
        assertThat(run("render", line.toString(), "--out", folder.resolve("out").toString()))
                .isZero();
        try (var pdf = Loader.loadPDF(folder.resolve("out/slack.pdf").toFile())) {
            assertThat(pdf.getNumberOfPages()).as("music, then words").isEqualTo(2);
        }
        var svg = DocumentBuilderFactory.newInstance()
                .newDocumentBuilder()
                .parse(folder.resolve("out/slack.svg").toFile());
        assertThat(svg.getDocumentElement().getTagName()).isEqualTo("svg");
        assertThat(svg.getElementsByTagName("style").item(0).getTextContent())
                .as("its fonts: CSS Fonts 4, section 4; RFC 2397, a data URL")
                .contains("@font-face", "src:url(data:font/ttf;base64,");
        assertThat(seconds("out/slack.mid")).isEqualTo(8); // a bar of count-in and a bar of 4/4 at 60 a minute
    }

    @Test
    void whatIsMadeOfOneFileIsNotWrittenOverWhatIsMadeOfAnother() throws Exception {
        var other = Files.createDirectory(folder.resolve("other")).resolve("slack.txt");
        Files.writeString(other, LINE);
        var out = folder.resolve("out");
        assertThat(run("render", line.toString(), other.toString(), "--out", out.toString(), "--only", "tab"))
                .isEqualTo(CommandLine.ExitCode.USAGE);
        assertThat(err.toString()).contains(other.toString(), "'slack'", "--out of its own");
        assertThat(out).isEmptyDirectory();
    }

    @Test
    void renderWritesSomeBarsAsAPictureForAVideo() throws Exception {
        assertThat(run("render", line.toString(), "--out", folder.toString(), "--only", "png", "--bars", "1"))
                .isZero();
        var picture = ImageIO.read(folder.resolve("slack-bars-1.png").toFile());
        assertThat(picture.getWidth()).isLessThanOrEqualTo(1920);
        assertThat(picture.getColorModel().hasAlpha()).isTrue();
    }

    @ParameterizedTest
    @CsvSource({"--bars,9", "--system,9", "--bars,3-2", "--bars,x", "--height,720", "--ink,green", "--paper,a9"})
    void whatHasNoSuchBarsOrFrameIsToldInWords(String option, String value) {
        assertThat(run("render", line.toString(), "--out", folder.toString(), "--only", "png", option, value))
                .isEqualTo(CommandLine.ExitCode.USAGE);
        assertThat(err.toString()).isNotBlank().doesNotContain("Exception");
    }

    /** ANSI/ASME Y14.1: size A is 8.5 by 11 inches of 72 points. */
    @Test
    void renderTakesThePaperAsked() throws Exception {
        assertThat(run("render", line.toString(), "--out", folder.toString(), "--only", "pdf", "--paper", "letter"))
                .isZero();
        try (var pdf = Loader.loadPDF(folder.resolve("slack.pdf").toFile())) {
            assertThat(Math.round(pdf.getPage(0).getMediaBox().getWidth())).isEqualTo(612);
            assertThat(Math.round(pdf.getPage(0).getMediaBox().getHeight())).isEqualTo(792);
        }
    }

    @Test
    void renderWritesTheGalleryWithoutAnyLine() {
        assertThat(run("render", "--gallery", folder.resolve("gallery").toString()))
                .isZero();
        assertThat(folder.resolve("gallery/gallery.html")).isNotEmptyFile();
        assertThat(folder.resolve("gallery/gallery.pdf")).isNotEmptyFile();
    }

    @Test
    void renderWritesMusicXmlPlainAndInAZip() throws Exception {
        assertThat(run("render", line.toString(), "--out", folder.toString(), "--only", "musicxml,mxl"))
                .isZero();
        var score = DocumentBuilderFactory.newInstance()
                .newDocumentBuilder()
                .parse(folder.resolve("slack.musicxml").toFile());
        assertThat(score.getDocumentElement().getTagName()).isEqualTo("score-partwise");
        try (var zip = new ZipFile(folder.resolve("slack.mxl").toFile())) {
            assertThat(zip.getInputStream(zip.getEntry("line.musicxml")).readAllBytes())
                    .isEqualTo(Files.readAllBytes(folder.resolve("slack.musicxml")));
        }
    }

    @Test
    void renderWritesTablatureInPlainText() throws IOException {
        assertThat(run("render", line.toString(), "--out", folder.toString(), "--only", "tab"))
                .isZero();
        assertThat(Files.readString(folder.resolve("slack.tab.txt")))
                .contains("Slack Water", "E |-0---------------3---------------|");
    }

    @Test
    void renderPlaysAtTheTempoAsked() throws Exception {
        assertThat(run("render", line.toString(), "--out", folder.toString(), "--only", "mid", "--tempo", "50%"))
                .isZero();
        assertThat(seconds("slack.mid")).isEqualTo(16);
        assertThat(folder.resolve("slack.pdf")).doesNotExist();
    }

    /** Of eight seconds, a bar to count in and one to play, four. */
    @Test
    void renderLeavesTheCountInOutWhereThatIsAsked() throws Exception {
        assertThat(run("render", line.toString(), "--out", folder.toString(), "--only", "mid", "--no-count-in"))
                .isZero();
        assertThat(seconds("slack.mid")).isEqualTo(4);
    }

    @Test
    void renderSpeaksTheLanguageAsked() throws IOException {
        assertThat(run(
                        "render",
                        line.toString(),
                        "--out",
                        folder.toString(),
                        "--only",
                        "walkthrough",
                        "--language",
                        "de"))
                .isZero();
        assertThat(folder.resolve("slack.txt")).content().contains("Takt 1");
    }

    /** Its first beat is two quavers, which Americans call eighths; the lowest string is E in every language. */
    @ParameterizedTest
    @CsvSource({
        "--language,en,eighths",
        "--language,en-GB,quavers",
        "--names,british,quavers",
        "--names,usual,eighths",
        "--depth,full,eighths",
        "--depth,brief,1 and 1& play open E",
    })
    void renderUsesTheNamesAsked(String option, String value, String name) throws IOException {
        var quavers = Files.writeString(folder.resolve("quay.txt"), "bar 1\n1 E0, E0\n2-4 E3\n");
        var out = folder.resolve("out");
        assertThat(run("render", quavers.toString(), "--out", out.toString(), "--only", "walkthrough", option, value))
                .isZero();
        try (var written = Files.list(out)) {
            assertThat(written)
                    .singleElement()
                    .satisfies(file -> assertThat(file).content().contains(name));
        }
    }

    @Test
    void namesOfAnotherLanguageAreRefused() {
        assertThat(run("render", line.toString(), "--out", folder.toString(), "--names", "international"))
                .isEqualTo(CommandLine.ExitCode.USAGE);
        assertThat(err.toString()).contains("--names international").doesNotContain("Exception");
        assertThat(folder.resolve("slack.pdf")).doesNotExist();
    }

    @ParameterizedTest
    @CsvSource({
        "--language,xx",
        "--tempo,fast",
        "--tempo,0",
        "--tempo,900%",
        "--tempo,99999999999",
        "--names,old",
        "--depth,deep",
        "--bass,tube",
        "--chords,organ"
    })
    void anOptionOutOfRangeIsToldInWords(String option, String value) {
        assertThat(run("render", line.toString(), "--out", folder.toString(), option, value))
                .isEqualTo(CommandLine.ExitCode.USAGE);
        assertThat(err.toString())
                .contains("'" + value + "'", "groundbass render --help")
                .doesNotContain("Exception", "Usage:");
    }

    @Test
    void checkTellsFileLineColumnAndFailsOnErrors() throws IOException {
        Files.writeString(line, LINE + "\nbar 2\n1-4 E58\n");
        assertThat(run("check", line.toString())).isEqualTo(1);
        assertThat(err.toString()).startsWith(line + ":8:5: error: ");
    }

    @Test
    void checkTellsWhatNoHandCanPlayAndFails() throws IOException {
        Files.writeString(line, LINE + "\nbar 2\n1-4 A5, A3 hammer\n");
        assertThat(run("check", line.toString())).isEqualTo(1);
        assertThat(err.toString())
                .startsWith(line + ":8:9: error: A hammer sounds a higher fret")
                .contains("Did you mean pull or finger?");
    }

    @Test
    void checkOnlyWarnsOfWhatIsUnwise() throws IOException {
        Files.writeString(line, LINE + "\nbar 2\n1-4 A5 ring, A3\n");
        assertThat(run("check", line.toString())).isZero();
        assertThat(err.toString()).startsWith(line + ":8:5: warning: ");
    }

    @Test
    void checkIsQuietWhereNothingIsWrong() {
        assertThat(run("check", line.toString())).isZero();
        assertThat(err.toString()).isEmpty();
    }

    @Test
    void aFileThatIsNotThereIsToldInOneLine() {
        assertThat(run("check", folder.resolve("none.line").toString())).isNotZero();
        assertThat(err.toString()).contains("none.line").doesNotContain("\tat ");
    }

    @Test
    void everyDemoLineChecksAndRenders() throws IOException {
        try (var files = Files.find(SEED_DATA, 4, (path, facts) -> path.endsWith("line.txt"))) {
            for (Path demo : files.toList()) {
                assertThat(run("check", demo.toString()))
                        .as("%s: %s", demo, err)
                        .isZero();
                assertThat(run("render", demo.toString(), "--out", folder.toString()))
                        .isZero();
            }
        }
    }

    private long seconds(String name) throws Exception {
        var bytes = Files.readAllBytes(folder.resolve(name));
        return Math.round(
                MidiSystem.getSequence(new ByteArrayInputStream(bytes)).getMicrosecondLength() / 1e6);
    }

    private int run(String... args) {
        return Main.commandLine(Map.of()).setErr(new PrintWriter(err, true)).execute(args);
    }
}
