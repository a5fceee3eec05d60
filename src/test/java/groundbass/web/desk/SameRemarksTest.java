package groundbass.web.desk;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.Main;
import groundbass.catalog.episode.Episode;
import groundbass.document.EpisodeDocument;
import groundbass.document.GrooveSource;
import groundbass.document.Level;
import groundbass.document.LineSource;
import groundbass.linetext.LineText;
import groundbass.publishing.preflight.Preflight;
import groundbass.text.Message;
import groundbass.text.Messages;
import io.restassured.specification.RequestSpecification;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.regex.Pattern;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Whichever way an educator looks at a lesson, the same is said of its texts, in the educator's language and at the same
 * places: at the command line, while typing, on the page without script, and before publishing.
 */
class SameRemarksTest {
    /** A hammer that falls (rule: legato-direction), and a fret that the neck does not have. */
    private static final String LINE = "bar 1\n1    E8, E5 hammer\n2-4  E58\n";

    private static final String GROOVE = "columns 4\nkick x-q-\n";
    private static final Studio studio = new Studio();
    private static final Episode episode = studio.episode("Said alike");
    private static final Pattern HEADLINE =
            Pattern.compile("(?m)^\\S+?:(\\d+):(\\d+): \\S+: (.*)\\R {4}.*\\R {4}( *)(\\^+)$");

    @TempDir
    private Path folder;

    /** What is said, and where: the line, the column and how many characters are underlined. */
    private record Said(int line, int column, int length, String sentence) {}

    @AfterAll
    static void close() {
        studio.close();
    }

    @ParameterizedTest
    @ValueSource(strings = {"en", "de"})
    void isSaidInEveryWay(String language) throws IOException {
        var line = atTheCommandLine(language, "", LINE);
        var groove = atTheCommandLine(language, "--groove", GROOVE);
        assertThat(line).as("a mistake and what no hand can play").hasSizeGreaterThan(1);
        assertThat(groove).hasSize(1);

        var page = withoutScript(language);
        assertThat(beside(page, "mainLine")).isEqualTo(line);
        assertThat(beside(page, "groove")).isEqualTo(groove);
        assertThat(page.select("#findings-mainLine [lang], #findings-groove [lang]"))
                .as("in the language of the page")
                .isEmpty();
        assertThat(whileTyping(language)).isEqualTo(line);
        assertThat(beforePublishing(language, "mainLine")).isEqualTo(sentences(line));
        assertThat(beforePublishing(language, "groove")).isEqualTo(sentences(groove));
    }

    @ParameterizedTest
    @ValueSource(strings = {"en", "de"})
    void isSaidInTheReadersOwnWords(String language) throws IOException {
        var said = sentences(atTheCommandLine(language, "", LINE));
        var fret = LineText.read(LINE).problems().get(0).sentence();
        assertThat(said).contains(Messages.of(Locale.forLanguageTag(language)).say(fret));
        assertThat(said.get(0)).contains(language.equals("de") ? "Bund 58 auf der E-Saite" : "Fret 58 on string E");
    }

    private List<Said> atTheCommandLine(String language, String option, String text) throws IOException {
        Path file = folder.resolve("typed.txt");
        Files.writeString(file, text);
        var err = new StringWriter();
        var arguments = new ArrayList<>(List.of("check", "--language", language, file.toString()));
        arguments.addAll(3, option.isEmpty() ? List.of() : List.of(option));
        int code =
                Main.commandLine(Map.of()).setErr(new PrintWriter(err, true)).execute(arguments.toArray(String[]::new));
        assertThat(code).as(err.toString()).isEqualTo(1);
        return HEADLINE.matcher(err.toString())
                .results()
                .map(found -> new Said(
                        Integer.parseInt(found.group(1)),
                        Integer.parseInt(found.group(2)),
                        found.group(5).length(),
                        found.group(3)))
                .toList();
    }

    private static Document withoutScript(String language) {
        studio.write(episode, LINE);
        studio.change(episode, edit -> edit.groove(new GrooveSource("", GROOVE)));
        String line = in(language).get(path("/line")).asString();
        return Jsoup.parse(line + in(language).get(path("/sound")).asString());
    }

    private static List<Said> beside(Document page, String field) {
        return page.select("#findings-" + field + " li").stream()
                .map(item -> new Said(
                        Integer.parseInt(item.select("a").attr("data-line")),
                        Integer.parseInt(item.select("a").attr("data-column")),
                        Integer.parseInt(item.select("a").attr("data-length")),
                        item.select("p span").text()))
                .toList();
    }

    private static List<Said> whileTyping(String language) {
        var live = in(language)
                .formParam("text", LINE)
                .formParam("width", "90")
                .formParam("prefix", "main")
                .post(path("/live"))
                .jsonPath();
        var said = new ArrayList<Said>();
        for (int i = 0; i < live.getList("remarks").size(); i++) {
            String remark = "remarks[" + i + "].";
            int from = live.getInt(remark + "from");
            said.add(new Said(
                    live.getInt(remark + "line"),
                    from - LINE.lastIndexOf('\n', from),
                    live.getInt(remark + "to") - from,
                    live.getString(remark + "sentence")));
        }
        return said;
    }

    /** The sentences alone: what stands before them is the place, for a list far from the text. */
    private static List<String> beforePublishing(String language, String field) {
        var document = EpisodeDocument.titled("Slack Water", Level.BEGINNER)
                .edit()
                .mainLine(new LineSource("", LINE))
                .groove(new GrooveSource("", GROOVE))
                .done();
        var messages = Messages.of(Locale.forLanguageTag(language));
        return new Preflight(() -> "https://example.org")
                .remarks(episode.id(), document).stream()
                        .filter(remark -> remark.field().equals(field))
                        .map(remark -> remark.message().args())
                        .map(args -> messages.say((Message) args.get(args.size() - 1)))
                        .toList();
    }

    private static List<String> sentences(List<Said> said) {
        return said.stream().map(Said::sentence).toList();
    }

    private static RequestSpecification in(String language) {
        return studio.form().header("Accept-Language", language);
    }

    private static String path(String end) {
        return "/desk/episodes/" + episode.id() + end;
    }
}
