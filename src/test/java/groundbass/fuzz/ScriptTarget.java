package groundbass.fuzz;

import static java.nio.charset.StandardCharsets.UTF_8;

import groundbass.linetext.LineText;
import groundbass.score.Line;
import groundbass.script.Chapters;
import groundbass.script.Proofreading;
import groundbass.script.RightWords;
import groundbass.script.captions.Script;
import groundbass.script.checking.Verdict;
import groundbass.text.Messages;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Random;

/** What is said of a line is proofread in both languages, and what contradicts is put into words. */
final class ScriptTarget implements Target {
    private final List<Line> lines = Examples.files(Path.of("seed-data"), "line.txt").stream()
            .map(text -> LineText.read(new String(text, UTF_8)).line())
            .toList();

    @Override
    public List<byte[]> examples() {
        var all = new ArrayList<byte[]>();
        for (byte[] table : Examples.files(Path.of("src/test/resources/spec/script"), ".tsv")) {
            new String(table, UTF_8)
                    .lines()
                    .forEach(row -> all.add(row.replace('\t', ' ').getBytes(UTF_8)));
        }
        all.addAll(Examples.files(Path.of("src/test/resources/spec/script"), "talk-02.txt"));
        return all;
    }

    @Override
    public List<String> words() {
        return List.of(
                (" bar| bars 1 to 4| beat| the and of| first| last| third| 41st| 0th| fret| string| strings| E| A| D| G| B flat|"
                                + " sharp| open| dead| ghost| note| hammer on| pull off| slide| to| from| is| same as| octave| two| 0|"
                                + " sixteenth| dotted| rest| quarter| for| beats| frets higher| Takt| Bund| Saite| Achtel| tot| leer|"
                                + " Oktave|.|,|;|:|(|)|?|\n")
                        .split("\\|"));
    }

    @Override
    public void take(byte[] input, Random random) {
        var line = lines.get(random.nextInt(lines.size()));
        var language = random.nextBoolean() ? Locale.ENGLISH : Locale.GERMAN;
        var messages = Messages.of(language);
        var script = Script.read(new String(input, UTF_8));
        var read = Proofreading.of(script.spoken(), line, language);
        var words = new RightWords(messages, line.header().tuning());
        read.contradictions().forEach(statement -> words.of(((Verdict.Contradicts) statement.verdict()).right()));
        Chapters.propose(script, line, language, messages);
    }
}
