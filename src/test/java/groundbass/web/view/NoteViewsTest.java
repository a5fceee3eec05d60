package groundbass.web.view;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.lesson.NotePieces;
import groundbass.lesson.PageContent.PieceContent;
import groundbass.lesson.Sheets;
import groundbass.linetext.LineText;
import groundbass.text.Messages;
import groundbass.web.Html;
import java.lang.management.ManagementFactory;
import java.time.Duration;
import java.util.List;
import java.util.Locale;
import java.util.function.Supplier;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Notes with pieces of the sheet; the form of an image is CommonMark 0.31 section 6.4. */
class NoteViewsTest {
    private static final String LINE = "bar 1\n1  E5\n2  A5\n3-4 D7\nbar 2\n1-4 G5\n";

    @Test
    void aPictureOfBarsIsAPieceOfTheSheet() {
        String html = html("Mind this:\n\n![The jump](bars:1-2)\n");
        assertThat(html)
                .contains(
                        "<p>Mind this:</p>", "<figure class=\"notes-piece\"><svg", "<figcaption>The jump</figcaption>");
        assertThat(html).doesNotContain("<img", "\uE000");
        assertThat(mistakes(html)).isEmpty();
    }

    @Test
    void someCountsOfABarStandAlone() {
        var whole = pieces("![](bar:1)").get(0);
        var part = pieces("![](bar:1:3-4)").get(0);
        assertThat(part.svg().split("class=\"event\"").length)
                .isLessThan(whole.svg().split("class=\"event\"").length);
        assertThat(part.svg()).contains(">7</text>").doesNotContain(">5</text>");
    }

    @Test
    void whatTheLineDoesNotHaveIsNamed() {
        assertThat(html("![Later](bars:7-9)")).contains("[Later]").doesNotContain("<figure");
        assertThat(html("![](bars:0-1)")).contains("[bars:0-1]");
    }

    @Test
    void amongWordsAndInListsTheMarkupStaysWhole() {
        String html = html("- one ![x](bar:1) two\n- three\n\nA word ![y](bar:2) more.\n");
        assertThat(html).contains("<span class=\"notes-piece\"><svg");
        assertThat(mistakes(html)).isEmpty();
    }

    /** The example of GitHub Flavored Markdown 0.29, section 4.10. */
    @Test
    void aTableIsATable() {
        String html = html("| foo | bar |\n| --- | :-: |\n| baz | <b>bim</b> |\n");
        assertThat(html.replaceAll("\\s", ""))
                .isEqualTo("<table><thead><tr><th>foo</th><th>bar</th></tr></thead>"
                        + "<tbody><tr><td>baz</td><td>&lt;b&gt;bim&lt;/b&gt;</td></tr></tbody></table>");
        assertThat(mistakes(html)).isEmpty();
    }

    /** Each line below a head is a row with all its cells. */
    @Test
    void aTableGrowsNoLargerThanItsText() {
        String wide = "|x".repeat(200) + "|\n" + "|-".repeat(200) + "|\n" + "y\n".repeat(5_000);
        assertThat(html(wide)).startsWith("<pre>|x|x").hasSizeLessThan(2 * wide.length());
    }

    /** GitHub Flavored Markdown 0.29, section 6.9: the full stop that ends a sentence is no part of the address. */
    @Test
    void anAddressAmongWordsIsALink() {
        String html = html("More at https://grooves.example/one?a=1. Not javascript:alert(1).");
        assertThat(html)
                .contains("<a href=\"https://grooves.example/one?a&#61;1\" rel=\"nofollow\">")
                .contains("</a>. Not javascript:alert(1).");
        assertThat(mistakes(html)).isEmpty();
    }

    @Test
    void nothingOfAWriterSlipsThrough() {
        String html =
                html("![\"><script>alert(1)</script>](bars:1)\n\n\uE0000\uE000 ![z](javascript:x) <b onclick=x>b</b>");
        assertThat(html).doesNotContain("<script", "onclick=x>", "javascript:", "<img");
        assertThat(html).contains("&gt;alert(1)");
    }

    /** Shown a hundred times at most, whatever the notes ask for: each showing is a drawing of its own in the page. */
    @Test
    void aPieceThatIsAskedForAgainAndAgainIsNamedInTheEnd() {
        String html = withinASecond(() -> html("![again](bars:1) ".repeat(400)));
        assertThat(html.split("<svg", -1)).hasSize(101);
        assertThat(html).contains("[again]");
        assertThat(html.length()).isLessThan(2_000_000);
    }

    /** Texts on which readers of Markdown are known to need a time that grows with the square of their length; from memory. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "![",
                "](",
                "[",
                "[a](",
                "*a ",
                "**a ",
                "_a*",
                "`a",
                "``a`",
                "> ",
                ">",
                "- ",
                "1. ",
                "<",
                "<a ",
                "<!--",
                "&",
                "&amp;",
                "\\",
                "[a]: b\n",
                "[a][",
                "![](bars:1)",
                "*a_ ",
                "* * ",
                "    ",
                "\n",
                "#",
                "a\n=\n",
                "~~~\n",
                "<b>",
                "http://",
                "[]()",
                "![[",
                "***",
                "\u0000",
                "<?",
                "<![CDATA[",
                "[^",
                "\"",
                ")",
                "![a]("
            })
    void noTextNeedsLong(String piece) {
        String text = piece.repeat(100_000 / piece.length());
        assertThat(withinASecond(() -> html(text))).isNotNull();
        assertThat(withinASecond(() -> html(text + text.replace('[', ']').replace("](", "](x)"))))
                .isNotNull();
    }

    @Test
    void notesWithMoreMarksThanAnybodySetsAreShownAsTyped() {
        String html = html("![".repeat(30_000) + "](".repeat(30_000) + " <b>");
        assertThat(html).contains("![![", "&lt;b&gt;").doesNotContain("<b>", "<a");
    }

    /** Its words stand for it, its title stands under it; one that is not there leaves its words. */
    @Test
    void aPictureOfTheEducatorsOwnIsShownWithItsWords() {
        String notes =
                "![The \"thumb\" \\<b>](picture:abcdefgh12345678 'Seen & heard')\n\n![Gone](picture:abcdefgh00000000)";
        var photo = new NoteViews.PhotoView("picture:abcdefgh12345678", "/play/r/notes-1.png", 40, 20);
        String html = NoteViews.html(notes, 3, List.of(), List.of(photo));
        assertThat(html)
                .contains(
                        "<img class=\"notes-photo\" src=\"/play/r/notes-1.png\" alt=\"The &quot;thumb&quot; &lt;b&gt;\""
                                + " width=\"40\" height=\"20\" loading=\"lazy\" decoding=\"async\">"
                                + "<figcaption>Seen &amp; heard</figcaption></figure>")
                .contains("<p>[Gone]</p>");
        assertThat(mistakes(html)).isEmpty();
    }

    /** By the thread's own time, so that other work does not count, and the least of three: the first is compiled meanwhile. */
    private static String withinASecond(Supplier<String> work) {
        var threads = ManagementFactory.getThreadMXBean();
        var least = Duration.ofDays(1);
        String made = "";
        for (int i = 0; i < 3 && least.compareTo(Duration.ofSeconds(1)) >= 0; i++) {
            long before = threads.getCurrentThreadCpuTime();
            made = work.get();
            least = Duration.ofNanos(threads.getCurrentThreadCpuTime() - before);
        }
        assertThat(least).isLessThan(Duration.ofSeconds(1));
        return made;
    }

    private static String html(String notes) {
        return NoteViews.html(notes, 3, pieces(notes), List.of());
    }

    private static List<PieceContent> pieces(String notes) {
        return NotePieces.of(notes, LineText.read(LINE).line(), new Sheets(Messages.of(Locale.ENGLISH)));
    }

    private static List<String> mistakes(String html) {
        String page = "<!DOCTYPE html><html lang=\"en\"><head><title>t</title></head><body>" + html + "</body></html>";
        return Html.mistakes(page.replace(" font-variant=\"lining-nums\"", ""));
    }
}
