package groundbass.web.view;

import static org.assertj.core.api.Assertions.assertThat;

import org.jsoup.Jsoup;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class PractiseLinksTest {
    /** The ampersand of a count is told apart from the one between two parameters: WHATWG URL, application/x-www-form-urlencoded. */
    @ParameterizedTest
    @CsvSource({
        "practise:3, ?from=3&to=3#sheet",
        "practise:3-4, ?from=3&to=4#sheet",
        "practise:3.2x2-4x2, ?from=3.2x2&to=4x2#sheet",
        "practise:3-4@60, ?from=3&to=4&tempo=60#sheet",
        "practise:3.2&-4.1e@112, ?from=3.2%26&to=4.1e&tempo=112#sheet"
    })
    void aPassageIsAnAddressOfTheLessonsOwnPage(String written, String address) {
        String html = Markdown.html("Then [these two](" + written + ") slowly.", 2);
        var link = Jsoup.parse(html).selectFirst("a");
        assertThat(link.attr("href")).isEqualTo(address);
        assertThat(link.text()).isEqualTo("these two");
    }

    @Test
    void whatIsNoPassageIsNoLink() {
        assertThat(Jsoup.parse(Markdown.html("[there](practise:soon)", 2)).select("a[href]"))
                .isEmpty();
    }

    @Test
    void otherLinksStayAsTheyAre() {
        var link = Jsoup.parse(Markdown.html("[elsewhere](https://trial.example/a?b=c)", 2))
                .selectFirst("a");
        assertThat(link.attr("href")).isEqualTo("https://trial.example/a?b=c");
    }
}
