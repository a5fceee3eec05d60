package groundbass.web.desk.line;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.hasItem;
import static org.hamcrest.Matchers.hasItems;
import static org.hamcrest.Matchers.hasSize;

import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import groundbass.catalog.episode.Episode;
import groundbass.lesson.Sheets;
import groundbass.text.Messages;
import groundbass.web.desk.Studio;
import groundbass.web.desk.access.DeskJson;
import io.restassured.path.json.JsonPath;
import io.restassured.response.Response;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What the page's script is answered. */
class LinePagesTest {
    private static final String LINE = """
            tempo 120
            strings E A D G

            bar 1 over Am7
            1    E5
            2    A5, A7 slap
            3-4  rest

            bar 2 = bar 1
            4    G5 hammer
            """;

    static final Studio studio = new Studio();
    static final Episode episode = studio.episode("Asked");

    @AfterAll
    static void close() {
        studio.close();
    }

    @Test
    void theLiveAnswerTellsWhereEachCountStandsInTheText() {
        var live = live(LINE).jsonPath();
        assertThat(live.getString("bars[0].columns[1].events")).isEqualTo("A5, A7 slap");
        int from = live.getInt("bars[0].columns[1].from");
        int to = live.getInt("bars[0].columns[1].to");
        assertThat(LINE.substring(from, to)).isEqualTo("A5, A7 slap");
        assertThat(live.getList("bars[1].columns.at")).isEqualTo(List.of("1", "2", "3", "4"));
        assertThat(live.getInt("bars[1].columns[0].from")).isEqualTo(-1);
        assertThat(live.getString("settings[0].value")).isEqualTo("120");
        assertThat(live.getList("systems.svg")).hasSize(1);
        assertThat(live.getFloat("bars[0].columns[0].x")).isBetween(0.05f, 0.5f);
        assertThat(live.getString("neck.strings[3].notes[5]")).isEqualTo("A"); // 5th fret of the E string
    }

    @Test // rule: technique-letters: the thumb is T, or S
    void aLineIsDrawnWithTheLettersOfItsSeries() {
        assertThat(live(LINE).jsonPath().getString("systems[0].svg")).contains(">T<");
        String letters = "/desk/series/" + studio.series.id() + "/letters";
        studio.form().formParam("slap", "S").post(letters).then().statusCode(303);
        assertThat(live(LINE).jsonPath().getString("systems[0].svg"))
                .contains(">S<")
                .doesNotContain(">T<");
        studio.write(episode, LINE);
        assertThat(studio.browser().get(path("/line")).asString())
                .contains(">S<")
                .doesNotContain(">T<");
        studio.form().formParam("slap", "").post(letters).then().statusCode(303);
    }

    @Test
    void aRemarkComesWithWhatMendsIt() {
        String wrong = LINE.replace("E5\n", "E58\n");
        var remark = live(wrong).jsonPath();
        assertThat(remark.getString("remarks[0].sentence")).contains("Fret 58 on string E");
        assertThat(remark.getString("remarks[0].fixes[0].label")).isEqualTo("E5");
        assertThat(remark.getInt("remarks[0].bar")).isEqualTo(1);
    }

    /** rule: legato-direction: a hammer sounds a higher fret. */
    @Test
    void aTeachersRemarkIsMendedInTheText() {
        String wrong = "bar 1\n1    E8, E5 hammer   # so\n2-4  rest\n";
        var live = live(wrong).jsonPath();
        assertThat(live.getString("remarks[0].weight")).isEqualTo("impossible");
        assertThat(live.getList("remarks[0].fixes.label")).isNotEmpty();
        int from = live.getInt("remarks[0].fixes[0].splices[0].from");
        assertThat(wrong.substring(from)).startsWith(" hammer");
    }

    @Test
    void aForgottenBeatIsFilledByOneKey() {
        var live = live("bar 1\n1    E5\n2    E5\n4    E5\n").jsonPath();
        assertThat(live.getList("remarks[0].fixes.label")).contains("3  rest");
    }

    @Test
    void whatIsNotBegunHasNoRemarks() {
        var live = live("").jsonPath();
        assertThat(live.getList("remarks")).isEmpty();
        assertThat(live.getList("systems")).isEmpty();
    }

    @Test
    void editsComeAsPiecesOfText() {
        studio.form()
                .formParam("text", LINE)
                .formParam("edit", "events")
                .formParam("bar", "1")
                .formParam("at", "1")
                .formParam("events", "E7")
                .post(path("/edit"))
                .then()
                .statusCode(200)
                .body("splices", hasSize(1))
                .body("splices[0].text", equalTo("E7"));
        studio.form()
                .formParam("text", LINE)
                .formParam("edit", "dance")
                .post(path("/edit"))
                .then()
                .statusCode(400);
    }

    @Test
    void aFewBarsAreHeardFromTheBarInHand() {
        var sound = studio.form().formParam("text", LINE).formParam("bar", "2").post(path("/listen"));
        assertThat(sound.statusCode()).isEqualTo(200);
        assertThat(sound.contentType()).isEqualTo("audio/mpeg");
        // one bar of four quarters at 120 lasts two seconds; the count-in before it another two
        assertThat(sound.header("Groundbass-Bars")).startsWith("2@2.000 end@4.000");
        assertThat(sound.asByteArray()).hasSizeGreaterThan(30_000);
        studio.form()
                .formParam("text", LINE)
                .formParam("bar", "7")
                .post(path("/listen"))
                .then()
                .statusCode(404);
    }

    /** rule: open-strings: E1 is 28, A1 33. */
    @Test
    void pitchesBecomePlaces() {
        studio.form()
                .formParam("text", LINE)
                .formParam("pitches", "28")
                .post(path("/places"))
                .then()
                .body("event", equalTo("E0"));
        studio.form()
                .formParam("text", LINE)
                .formParam("pitches", "27")
                .post(path("/places"))
                .then()
                .body("event", equalTo(""));
        studio.form()
                .formParam("text", LINE)
                .formParam("pitches", "36")
                .formParam("before", "A5 A7")
                .post(path("/places"))
                .then()
                .body("event", equalTo("E8")); // under the hand that stands there, not back at A3
    }

    @Test
    void otherWaysKeepThePitches() {
        var ways = studio.form()
                .formParam("text", "bar 1\n1-4  E5, E8, A5, A7\n")
                .formParam("bar", "1")
                .post(path("/ways"))
                .jsonPath();
        assertThat(ways.getList("ways")).isNotEmpty();
        assertThat(ways.getString("ways[0].why")).isNotBlank();
    }

    /** The notes of a chord come by their strings, whichever is typed first. */
    @ParameterizedTest
    @ValueSource(strings = {"A7+D9", "D9+A7"})
    void whatAnotherWayPutsIntoTheTextComesFromItsStartToItsEnd(String chord) {
        var ways = studio.form()
                .formParam("text", "bar 1\n1-4  " + chord + "\n")
                .formParam("bar", "1")
                .post(path("/ways"))
                .jsonPath();
        assertThat(ways.getList("ways[0].splices.from", Integer.class))
                .hasSize(2)
                .isSorted();
    }

    @Test
    void theWordsAreThoseOfTheReader() {
        studio.browser()
                .get("/desk/line-words")
                .then()
                .statusCode(200)
                .body("techniques", hasItems("slap", "pop"))
                .body("events", hasItems("hammer", "rest"))
                .body("chords", hasItem("m7"));
    }

    /** How fast that is, {@code LineBench} and its kin measure. */
    @Test
    void sixteenBarsAreAnsweredWhole() {
        var messages = Messages.of(Locale.ENGLISH);
        var asked = new LineDrawing.Asked(sixteenBars(), 100, "main", false, Set.of());
        var live = LineDrawing.of(asked, new Sheets(messages), messages).whole();
        assertThat(live.bars()).hasSize(16);
        assertThat(JsonPath.from(new String(DeskJson.write(live), StandardCharsets.UTF_8))
                        .getList("bars"))
                .hasSize(16);
    }

    /** One figure of one bar is another, also one that stands higher: the systems in which nothing changed are not sent again. */
    @ParameterizedTest
    @ValueSource(strings = {"E7", "E20"})
    void onlyWhatThePageDoesNotShowIsSent(String place) {
        var before = live(sixteenBars()).jsonPath();
        List<String> shown = before.getList("systems.key");
        assertThat(shown).hasSizeGreaterThan(2).doesNotHaveDuplicates();
        assertThat(before.getList("systems.svg", String.class)).noneMatch(String::isEmpty);
        String changed = sixteenBars().replaceFirst("(?s)(bar 6 .*?)E5, E8", "$1E5, " + place);
        var after = live(changed, String.join(" ", shown)).jsonPath();
        assertThat(after.getList("systems.svg", String.class))
                .filteredOn(svg -> !svg.isEmpty())
                .hasSize(1);
        List<String> keys = after.getList("systems.key");
        assertThat(keys).hasSameSizeAs(shown).isNotEqualTo(shown);
        for (int i = 0; i < keys.size(); i++) {
            boolean sent = !after.getString("systems[" + i + "].svg").isEmpty();
            assertThat(keys.get(i).equals(shown.get(i))).isNotEqualTo(sent);
        }
    }

    private static String sixteenBars() {
        var text = new StringBuilder("key A dorian\ntempo 96\n");
        for (int bar = 1; bar <= 16; bar++) {
            text.append("\nbar ").append(bar).append(" over Am7\n1    E5\n1&   E5, E8\n2    A5, Ax\n2&   A7 short\n");
            text.append("3    E5, E7 hammer, A5\n4    E8*2 slap, D5 pop, E5 slap\n");
        }
        return text.toString();
    }

    /** Two lines of JSON: the drawing does not wait for what is said of it. */
    @Test
    void theDrawingComesBeforeItsRemarks() throws IOException {
        String text = "bar 1\n1 2 3 4  A5, A5, Z5, A5\n";
        String[] pieces = studio.form()
                .formParam("text", text)
                .formParam("width", "90")
                .formParam("prefix", "main")
                .formParam("apart", "yes")
                .post(path("/live"))
                .then()
                .statusCode(200)
                .contentType("application/x-ndjson")
                .extract()
                .asString()
                .split("\n");
        assertThat(pieces).hasSize(2);
        var json = new ObjectMapper();
        var whole = (ObjectNode) json.readTree(live(text).asString());
        var remarks = json.readTree(pieces[1]).get("remarks");
        assertThat(remarks).isNotEmpty();
        assertThat(((ObjectNode) json.readTree(pieces[0]))
                        .set("remarks", remarks)
                        .toString())
                .isEqualTo(whole.toString());
    }

    private static Response live(String text) {
        return live(text, "");
    }

    private static Response live(String text, String has) {
        return studio.form()
                .formParam("has", has)
                .formParam("text", text)
                .formParam("width", "90")
                .formParam("prefix", "main")
                .post(path("/live"));
    }

    private static String path(String end) {
        return "/desk/episodes/" + episode.id() + end;
    }
}
