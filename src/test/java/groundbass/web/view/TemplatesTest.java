package groundbass.web.view;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.text.Messages;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Element;
import org.jsoup.nodes.TextNode;
import org.jsoup.parser.Parser;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Rules that every template keeps, whoever writes it. */
class TemplatesTest {
    private static final Pattern LETTERS = Pattern.compile("\\p{L}{2,}");
    private static final Pattern KEY = Pattern.compile("#\\{([a-zA-Z0-9.-]+)[}(]");
    private static final List<String> READ_BY_PEOPLE = List.of("title", "alt", "placeholder", "aria-label", "label");

    static List<Path> templates() throws IOException {
        try (var files = Files.walk(Path.of("templates"))) {
            return files.filter(file -> file.toString().endsWith(".html"))
                    .sorted()
                    .toList();
        }
    }

    @ParameterizedTest
    @MethodSource("templates")
    void noTextIsWrittenInATemplate(Path template) throws IOException {
        var page = Jsoup.parse(Files.readString(template), "", Parser.htmlParser());
        var texts = new ArrayList<String>();
        for (var element : page.getAllElements()) {
            element.textNodes().stream().map(TextNode::text).forEach(texts::add);
            READ_BY_PEOPLE.forEach(name -> texts.add(element.attr(name)));
            texts.add(valueOfButton(element));
        }
        assertThat(texts).isNotEmpty().noneMatch(text -> LETTERS.matcher(text).find());
    }

    @ParameterizedTest
    @MethodSource("templates")
    void everyKeyIsInTheBundle(Path template) throws IOException {
        var messages = Messages.of(Locale.ENGLISH);
        var keys = KEY.matcher(Files.readString(template)).results().map(found -> found.group(1));
        assertThat(keys.filter(key -> !messages.has(key))).isEmpty();
    }

    /** The content security policy forbids inline code and style; unescaped output is for our own markup only. */
    @ParameterizedTest
    @MethodSource("templates")
    void noTemplateHoldsCodeOrStyle(Path template) throws IOException {
        var page = Jsoup.parse(Files.readString(template));
        assertThat(page.select("style, script:not([th:src]), [style], [th:style]"))
                .isEmpty();
        for (var element : page.getAllElements()) {
            assertThat(element.attributes())
                    .noneMatch(attribute -> attribute.getKey().matches("(th:)?on[a-z]+"));
        }
    }

    /** What an element is replaced by is decided before it is repeated or left out (Thymeleaf 3.1, Attribute Precedence). */
    @ParameterizedTest
    @MethodSource("templates")
    void noConditionStandsOnWhatIsReplaced(Path template) throws IOException {
        var page = Jsoup.parse(Files.readString(template), "", Parser.xmlParser());
        for (var element : page.getAllElements()) {
            boolean replaced = element.hasAttr("th:replace") || element.hasAttr("th:insert");
            boolean asked = element.hasAttr("th:if") || element.hasAttr("th:unless") || element.hasAttr("th:each");
            assertThat(replaced && asked).as(element.toString()).isFalse();
        }
    }

    private static String valueOfButton(Element element) {
        return element.is("input[type=submit], input[type=button]") ? element.attr("value") : "";
    }
}
