package groundbass.fuzz;

import static java.nio.charset.StandardCharsets.UTF_8;

import groundbass.linetext.LineText;
import groundbass.script.Chapters;
import groundbass.script.captions.Script;
import groundbass.text.Messages;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;

/** Captions and lists of chapters. */
final class CaptionsTarget implements Target {
    @Override
    public List<byte[]> examples() {
        var all = new ArrayList<>(Examples.files(Path.of("src/test/resources/spec/script"), "captions.vtt"));
        all.addAll(
                Examples.texts(
                        "0:00 Hello\n1:05 Bar one\n1:00:00 The end\n",
                        "1\n00:00:01,000 --> 00:00:04,000\nBar one is A and C.\n\n2\n00:00:05,000 --> 00:00:06,000\nBar two.\n"));
        return all;
    }

    @Override
    public List<String> words() {
        return List.of(
                "WEBVTT",
                "NOTE",
                "STYLE",
                "-->",
                "00:01.000 --> 00:02.000",
                "99:99:99.999",
                "&lt;",
                "<v Somebody>",
                "\n",
                "\n\n",
                "Bar two");
    }

    @Override
    public void take(byte[] input, Random random) {
        String text = new String(input, UTF_8);
        var script = Script.read(text);
        var line = LineText.read("bar 1\n1-4 E0*4\nbar 2\n1-4 A3\n").line();
        var proposed = Chapters.propose(script, line, Locale.ENGLISH, Messages.of(Locale.ENGLISH));
        Chapters.read(Chapters.list(proposed));
        var listed = Chapters.read(text).chapters();
        Chapters.webVtt(listed, random.nextInt(1_000_000));
        Chapters.list(listed);
    }
}
