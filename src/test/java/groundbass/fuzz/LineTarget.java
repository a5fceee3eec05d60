package groundbass.fuzz;

import static java.nio.charset.StandardCharsets.UTF_8;

import groundbass.checks.Checks;
import groundbass.engraving.options.Paper;
import groundbass.engraving.sheet.Layout;
import groundbass.engraving.sign.TestWords;
import groundbass.engraving.svg.SheetSvg;
import groundbass.lesson.LineRemarks;
import groundbass.linetext.LineText;
import groundbass.linetext.edit.Outline;
import groundbass.midi.MidiFile;
import groundbass.performance.Performance;
import groundbass.remark.Report;
import groundbass.score.Line;
import groundbass.text.Languages;
import groundbass.text.Messages;
import groundbass.walkthrough.Walkthrough;
import groundbass.writing.Writing;
import java.io.ByteArrayInputStream;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;
import javax.xml.parsers.DocumentBuilderFactory;

/** Line text is read, and now and then drawn, told, judged and played. */
final class LineTarget implements Target {
    private static final int DRAWN = 20;
    private static final int MOST_BARS = 40;

    @Override
    public List<byte[]> examples() {
        var all = new ArrayList<>(Examples.files(Path.of("seed-data"), "line.txt"));
        all.addAll(Examples.files(Path.of("src/test/resources/spec/line-text"), ".txt"));
        return all;
    }

    @Override
    public List<String> words() {
        return List.of(
                ("bar 1|bar 0|bar 2 = bar 1 counts 2-3|over Am7|until 2&|until end|1|2&|9-2|1-99|E5|E58|Ex|s9f1|hold|E hold|"
                                + "rest*3|*0|*999999|+|,|=|#|slide in|bend 9/9|hammer from 99|harmonic at 0|as Q|with 7|repeat start|"
                                + "repeat end x99|ending 2|meter 7/8 (2+2+4)|meter 0/4|tempo 0|tempo 99999|feel swing 8ths 2:1|"
                                + "strings E A D G|strings|frets 0|key H minor|pickup|short|slap|pop|grace|trill|roll|bracket|\n|\n\n")
                        .split("\\|"));
    }

    @Override
    public void take(byte[] input, Random random) throws Throwable {
        String text = new String(input, UTF_8);
        var reading = LineText.read(text);
        Languages.SPOKEN.forEach(
                language -> new Report(reading.origins().source(), Messages.of(language)).of(LineRemarks.of(reading)));
        Outline.of(text);
        LineText.read(LineText.print(reading.line()));
        if (random.nextInt(DRAWN) == 0 && reading.line().bars().size() <= MOST_BARS) {
            render(reading.line());
        }
    }

    private static void render(Line line) throws Exception {
        for (var page : Layout.of(Writing.of(line), TestWords.options(Paper.screen(110)))) {
            String svg = SheetSvg.of(page, "s", "en", "Title", "Words");
            DocumentBuilderFactory.newInstance()
                    .newDocumentBuilder()
                    .parse(new ByteArrayInputStream(svg.getBytes(UTF_8)));
        }
        Walkthrough.of(line, Messages.of(Locale.GERMAN));
        Checks.of(line);
        MidiFile.of(Performance.of(line));
    }
}
