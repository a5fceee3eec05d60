package groundbass.cli;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.Main;
import groundbass.linetext.LineText;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class ConvertCommandTest {
    private static final String LINE = "title Slack Water\ntempo 60\n\nbar 1\n1-4 E0, E3, E5 slap\n";

    @TempDir
    private Path folder;

    private final StringWriter err = new StringWriter();

    private int run(String... args) {
        return Main.commandLine(Map.of()).setErr(new PrintWriter(err, true)).execute(args);
    }

    private Path score() throws IOException {
        Path line = folder.resolve("slack.line");
        Files.writeString(line, LINE);
        assertThat(run("render", line.toString(), "--out", folder.toString(), "--only", "mxl"))
                .isZero();
        return folder.resolve("slack.mxl");
    }

    @Test
    void whatWasRenderedIsReadAgain() throws IOException {
        Path out = folder.resolve("lines");
        assertThat(run("convert", score().toString(), "--out", out.toString()))
                .as(err.toString())
                .isZero();
        var reading = LineText.read(Files.readString(out.resolve("slack.line")));
        assertThat(reading.problems()).isEmpty();
        assertThat(reading.line()).isEqualTo(LineText.read(LINE).line());
    }

    @Test
    void aLineThatIsThereIsNotWrittenOverUnasked() throws IOException {
        String score = score().toString();
        assertThat(run("convert", score, "--out", folder.toString())).isEqualTo(1);
        assertThat(err.toString()).contains("is there already");
        assertThat(Files.readString(folder.resolve("slack.line"))).isEqualTo(LINE);
        assertThat(run("convert", score, "--out", folder.toString(), "--force")).isZero();
    }

    @Test
    void whatCannotBeReadIsTold() throws IOException {
        Path words = folder.resolve("words.xml");
        Files.writeString(words, "just words");
        assertThat(run("convert", words.toString(), folder.resolve("none.xml").toString(), "--out", folder.toString()))
                .isEqualTo(1);
        assertThat(err.toString())
                .contains("words.xml: error: This is neither a MusicXML nor a MIDI file")
                .contains("there is no such file");
    }
}
