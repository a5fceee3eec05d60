package groundbass.publishing;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.web.Html;
import java.io.StringReader;
import java.util.Locale;
import java.util.Optional;
import javax.xml.parsers.DocumentBuilderFactory;
import org.jsoup.Jsoup;
import org.junit.jupiter.api.Test;
import org.xml.sax.InputSource;

class AnnouncementTest {
    private static final Announcement.Foot FOOT = new Announcement.Foot(
            "You asked for it.", "End it", "https://example.org/news/end/a.b?c&d", "Quay Studio\nHarbour Street 1");
    private static final Announcement NEWS = new Announcement(
            Locale.GERMAN,
            "New <b>",
            "Out & about: <script>",
            "No. 2: \"Übung\" 𝄢",
            "Low Tide, beginner",
            "",
            "https://example.org/e/1",
            Optional.empty());

    @Test
    void itsTextIsParagraphsAndTheFootIsPartedOff() {
        assertThat(NEWS.plain()).isEqualTo("""
                        Out & about: <script>

                        No. 2: "Übung" 𝄢
                        Low Tide, beginner

                        https://example.org/e/1
                        """);
        // RFC 3676 section 4.3: two hyphens and a space, alone on a line
        assertThat(NEWS.with(FOOT).plain())
                .contains("\n\n-- \nYou asked for it.\nEnd it https://example.org/news/end/");
    }

    /** XML 1.0 section 2.2 has no such character: a mail program that reads the page as XML would show none of it. */
    @Test
    void whatNoPageMayHoldIsLeftOut() throws Exception {
        var news = new Announcement(
                Locale.ENGLISH,
                "News",
                "It is out.",
                "No. 2",
                "Low Tide",
                "From a\u000B word processor\uFFFE.",
                "https://example.org/e/1",
                Optional.empty());
        var page = DocumentBuilderFactory.newDefaultInstance()
                .newDocumentBuilder()
                .parse(new InputSource(new StringReader(news.with(FOOT).html())));
        assertThat(page.getDocumentElement().getTextContent()).contains("From a word processor.");
        assertThat(news.fragment()).contains("<p>From a word processor.</p>");
    }

    @Test
    void itsPageConformsAndNothingInItIsMarkupOfOthers() {
        String page = NEWS.with(FOOT).html();
        assertThat(Html.mistakes(page)).isEmpty();
        var read = Jsoup.parse(page);
        assertThat(read.select("script, img, link, style, b")).isEmpty();
        assertThat(read.select("html").attr("lang")).isEqualTo("de");
        assertThat(read.title()).isEqualTo("New <b>");
        assertThat(read.text()).contains("Out & about: <script>", "No. 2: \"Übung\" 𝄢", "Harbour Street 1");
        assertThat(read.select("a").eachAttr("href"))
                .containsExactly(
                        "https://example.org/e/1", "https://example.org/e/1", "https://example.org/news/end/a.b?c&d");
        assertThat(Jsoup.parseBodyFragment(NEWS.fragment()).body().childrenSize())
                .isEqualTo(1);
    }
}
