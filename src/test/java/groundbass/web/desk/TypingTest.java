package groundbass.web.desk;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Keyboard;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.Route;
import groundbass.catalog.episode.Episode;
import groundbass.web.Browser;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Named;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * What is complete as typed stays as it was typed: texts go in key by key and must come out the same. What is typed comes from
 * outside the desk: the README, the beginnings of the demonstration's lines, chord names as players write them.
 */
@Tag("browser")
class TypingTest {
    /** Lists of words open as a key goes up, so that each is there before the next key goes down. */
    private static final Keyboard.TypeOptions SLOWLY = new Keyboard.TypeOptions().setDelay(1);

    private static final int LONGEST = 150;

    @RegisterExtension
    static final DeskVisit desk = new DeskVisit();

    static Stream<Named<String>> texts() throws IOException {
        String readme = Files.readString(Path.of("README.md"), UTF_8);
        var example = Pattern.compile("```\n(title .*?)```", Pattern.DOTALL).matcher(readme);
        assertThat(example.find()).as("README shows a line").isTrue();
        try (var files = Files.walk(Path.of("seed-data"))) {
            var lines = files.filter(file -> file.endsWith("line.txt"))
                    .sorted()
                    .map(file -> Named.of(file.getParent().getFileName().toString(), beginning(read(file))))
                    .toList();
            assertThat(lines).hasSizeGreaterThanOrEqualTo(6);
            return Stream.concat(Stream.of(Named.of("README", example.group(1))), lines.stream());
        }
    }

    @ParameterizedTest
    @MethodSource("texts")
    void aTextStaysAsItIsTyped(String text) {
        var page = desk.editor(desk.studio().episode("Typed"));
        page.route(
                "**/desk/episodes/**", Route::abort); // drawing and saving have tests of their own, and take their time
        page.getByLabel("Line text", exactly()).focus();
        page.keyboard().type(text, SLOWLY);
        assertThat(page.locator("#mainLine")).hasValue(text);
    }

    @ParameterizedTest
    @ValueSource(strings = {"E", "Em7", "A7", "Am7", "D9", "G", "Gmaj7", "F#m7", "B7", "Bb", "C/E", "N.C."})
    void aChordOfABarStaysAsItIsTyped(String chord) {
        var page = desk.editor(written("Chord " + chord));
        page.locator("[data-bar-spot='1']").click();
        page.getByLabel("Chords", exactly()).focus();
        page.keyboard().press("Control+a");
        page.keyboard().type(chord, SLOWLY);
        page.keyboard().press("Tab");
        assertThat(page.locator("#mainLine")).hasValue("bar 1 over " + chord + "\n1-4  E5\n");
    }

    @ParameterizedTest
    @ValueSource(strings = {"swing", "straight"})
    void aFeelStaysAsItIsTyped(String feel) {
        var page = desk.editor(written("Feel " + feel));
        page.locator(".stand [data-do='settings']").first().click();
        page.getByLabel("Feel", exactly()).first().focus();
        page.keyboard().type(feel, SLOWLY);
        page.keyboard().press("Enter");
        assertThat(page.locator("#mainLine")).hasValue(Pattern.compile("feel +" + feel + "\n"));
    }

    @Test
    void aChosenWordIsTaken() {
        var page = desk.editor(desk.studio().episode("Chosen"));
        page.getByLabel("Line text", exactly()).focus();
        page.keyboard().type("bar 1\n1-4  E5 sla", SLOWLY);
        var slap = page.locator(".cm-tooltip-autocomplete [role=option]").first();
        assertThat(slap).hasText("slap");
        var chosen = page.locator(".cm-tooltip-autocomplete [role=option][aria-selected=true]");
        page.waitForCondition(
                () -> { // a list that has just opened passes keys over to the text, which may close it
                    if (slap.count() == 0) {
                        page.keyboard().press("Backspace");
                        page.keyboard().type("a");
                        slap.waitFor();
                        return false;
                    }
                    page.keyboard().press("ArrowDown");
                    return chosen.count() == 1;
                });
        page.keyboard().press("Enter");
        assertThat(page.locator("#mainLine")).hasValue("bar 1\n1-4  E5 slap");
    }

    /** A word that was asked for is chosen; typing on is an answer of one's own. */
    @Test
    void anAskedWordIsChosenUntilOneTypesOn() {
        var page = desk.editor(desk.studio().episode("Asked"));
        page.getByLabel("Line text", exactly()).focus();
        page.keyboard().type("bar 1\n1-4  E5 s", SLOWLY);
        page.keyboard().press("Escape");
        page.keyboard().press("Control+Space");
        var chosen = page.locator(".cm-tooltip-autocomplete [role=option][aria-selected=true]");
        assertThat(chosen).hasCount(1);
        assertThat(page.locator(".cm-tooltip-autocomplete [role=option]").first())
                .hasAttribute("aria-selected", "true");
        assertThat(Browser.barriers(page)).isEmpty();
        page.keyboard().type("l");
        assertThat(page.locator(".cm-tooltip-autocomplete [role=option]").first())
                .hasText(Pattern.compile("^sl"));
        assertThat(chosen).hasCount(0);
        page.keyboard().press("Enter");
        assertThat(page.locator("#mainLine")).hasValue("bar 1\n1-4  E5 sl\n");
    }

    /** WCAG 2.2, success criterion 2.1.2: no keyboard trap. */
    @Test
    void theKeyboardLeavesTheTextBothWays() {
        var page = desk.editor(written("Left"));
        for (String key : List.of("Tab", "Shift+Tab")) {
            var text = page.getByLabel("Line text", exactly());
            text.focus();
            assertThat(text).isFocused();
            page.keyboard().press(key);
            assertThat(text).not().isFocused();
        }
        assertThat(page.locator("#mainLine")).hasValue("bar 1 over F\n1-4  E5\n");
    }

    /** Its whole lines of text up to a length: the words of a line come back in its later bars, and keys take time. */
    private static String beginning(String text) {
        return text.length() <= LONGEST ? text : text.substring(0, text.lastIndexOf('\n', LONGEST) + 1);
    }

    private static String read(Path file) {
        try {
            return Files.readString(file, UTF_8);
        } catch (IOException failure) {
            throw new AssertionError(file.toString(), failure);
        }
    }

    private static Page.GetByLabelOptions exactly() {
        return new Page.GetByLabelOptions().setExact(true);
    }

    private static Episode written(String title) {
        return desk.written(title, "bar 1 over F\n1-4  E5\n");
    }
}
