package groundbass.web.desk.room;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.endsWith;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.not;

import groundbass.catalog.episode.Episode;
import groundbass.document.LineSource;
import groundbass.web.desk.OpenRoom;
import groundbass.web.desk.Studio;
import io.restassured.specification.RequestSpecification;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.jsoup.Jsoup;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What every room of a lesson keeps to: its own address, its own fields, and nothing typed is lost. */
class RoomsTest {
    static final Studio studio = new Studio();

    @AfterAll
    static void close() {
        studio.close();
    }

    /** A room in which something is typed: its address, a field, and what is typed there. */
    record Typed(String way, String field, String text) {}

    static List<Typed> rooms() {
        return List.of(
                new Typed("line", "mainLine", "bar 1\n1-4 E1\n"),
                new Typed("exercises/1", "exerciseText", "bar 1\n1-4 E2\n"),
                new Typed("sound", "settings.tempos", "60 100"),
                new Typed("notes", "notes", "Keep the thumb still."),
                new Typed("walkthrough", "said", "Let the low A ring, and count."),
                new Typed("script", "script", "Bar one is all there is."),
                new Typed("facts", "rights.statement", "Own work of mine."));
    }

    @ParameterizedTest
    @MethodSource("rooms")
    void aRoomSavesWhatItSaysAndLeadsBackToItself(Typed typed) {
        var episode = lesson("Saved");
        open(episode, typed)
                .save()
                .then()
                .statusCode(303)
                .header("Location", endsWith(path(episode) + "/" + typed.way()));
        assertThat(OpenRoom.of(studio, episode, typed.way()).said(typed.field()))
                .isEqualTo(typed.text());
    }

    /** Each room is opened in a window of its own; then all are saved, one after the other. */
    @Test
    void roomsInManyWindowsOverwriteNothingOfOneAnother() {
        var episode = lesson("Seven windows");
        var windows = rooms().stream().map(typed -> open(episode, typed)).toList();
        assertThat(windows).hasSize(Room.values().length - 1); // in the last nothing is written
        windows.forEach(window -> window.keep().then().statusCode(200).body("saved", equalTo(true)));
        var document = studio.document(episode);
        assertThat(document.mainLine().text()).isEqualTo("bar 1\n1-4 E1\n");
        assertThat(document.exercises()).extracting(LineSource::text).containsExactly("bar 1\n1-4 E2\n");
        assertThat(document.settings().tempos()).isEqualTo("60 100");
        assertThat(document.notes()).isEqualTo("Keep the thumb still.");
        assertThat(document.walkthroughEdits()).hasSize(1);
        assertThat(document.script()).isEqualTo("Bar one is all there is.");
        assertThat(document.rights().statement()).isEqualTo("Own work of mine.");
    }

    @ParameterizedTest
    @MethodSource("rooms")
    void twoWindowsOfOneRoomLoseNothing(Typed typed) {
        var episode = lesson("Two windows");
        var late = OpenRoom.of(studio, episode, typed.way());
        open(episode, typed).keep().then().statusCode(200);
        String mine = typed.text() + " And mine";
        var all = new ArrayList<>(late.all(typed.field()));
        all.set(0, mine);
        late.type(typed.field(), all.toArray(String[]::new));
        late.keep()
                .then()
                .statusCode(409)
                .body("saved", equalTo(false))
                .body("others[0].stored", equalTo(typed.text()));
        var page = late.save();
        assertThat(page.statusCode()).isEqualTo(409);
        assertThat(Jsoup.parse(page.asString()).select("textarea[id^=stored]").eachText())
                .anyMatch(text -> text.contains(typed.text().strip()));
        assertThat(page.asString()).contains("And mine", "Saved elsewhere in the meantime");
        assertThat(Studio.mistakes(page.asString())).isEmpty();
        assertThat(OpenRoom.of(studio, episode, typed.way()).said(typed.field()))
                .isEqualTo(typed.text());

        String base = Jsoup.parse(page.asString()).select("#room [name=base]").val();
        late.type("base", base).save().then().statusCode(303);
        assertThat(OpenRoom.of(studio, episode, typed.way()).said(typed.field()))
                .isEqualTo(mine);
    }

    /** Where the first answer was lost, the browser sends the same again. */
    @ParameterizedTest
    @MethodSource("rooms")
    void whatIsStoredAlreadyInTheseWordsCountsAsSaved(Typed typed) {
        var episode = lesson("Sent twice");
        var room = open(episode, typed);
        var first = room.keep().then().statusCode(200).extract();
        var again = room.keep().then().statusCode(200).extract();
        assertThat(again.<String>path("base")).isEqualTo(first.path("base")).isNotEqualTo(room.said("base"));
    }

    @ParameterizedTest
    @MethodSource("rooms")
    void whoseSignInHasRunOutGetsTheTextBackAndSavesItBySigningIn(Typed typed) {
        var episode = lesson("Long afternoon");
        var room = open(episode, typed);
        var expired = room.send(studio.site.form(), "");
        assertThat(expired.statusCode()).isEqualTo(401);
        assertThat(expired.asString()).contains("Please sign in again").doesNotContain("Low Tide", "<svg");
        assertThat(Studio.mistakes(expired.asString())).isEmpty();
        room.send(studio.site.form(), "/draft").then().statusCode(401);

        studio.site.clock().advance(Duration.ofMinutes(15));
        var page = Jsoup.parse(expired.asString());
        signingIn(
                        page.select("form [name]").stream().map(field -> new String[] {
                            field.attr("name"), field.tagName().equals("textarea") ? field.wholeText() : field.val()
                        }),
                        "not the password")
                .post(path(episode) + "/" + typed.way())
                .then()
                .statusCode(401)
                .body(containsString("do not fit together"));
        var saved = signingIn(
                        page.select("form [name]").stream().map(field -> new String[] {
                            field.attr("name"), field.tagName().equals("textarea") ? field.wholeText() : field.val()
                        }),
                        "a password for trials")
                .post(path(episode) + "/" + typed.way());
        assertThat(saved.statusCode()).isEqualTo(303);
        assertThat(saved.cookies()).containsKey("session");
        assertThat(OpenRoom.of(studio, episode, typed.way()).said(typed.field()))
                .isEqualTo(typed.text());
    }

    private static RequestSpecification signingIn(Stream<String[]> fields, String password) {
        var form = studio.site.form().contentType("application/x-www-form-urlencoded; charset=utf-8");
        fields.filter(field -> !List.of("email", "password").contains(field[0]))
                .forEach(field -> form.formParam(field[0], field[1]));
        return form.formParam("email", "desk@trial.example").formParam("password", password);
    }

    @ParameterizedTest
    @EnumSource(Room.class)
    void aPageConformsToHtmlAndListsAllRoomsWithTheirStates(Room room) {
        var episode = lesson("Conforming");
        String path = path(episode) + "/" + (room == Room.EXERCISES ? "exercises/1" : room.word());
        for (String language : List.of("en", "de")) {
            String answer = studio.browser()
                    .header("Accept-Language", language)
                    .get(path)
                    .asString();
            assertThat(Studio.mistakes(answer)).isEmpty();
            var rooms = Jsoup.parse(answer).select("nav.rooms a");
            assertThat(rooms).hasSize(Room.values().length);
            assertThat(rooms.select("[aria-current=page]").eachAttr("href"))
                    .containsExactly(path(episode) + "/" + room.word());
            assertThat(rooms.eachAttr("aria-describedby")).allSatisfy(id -> assertThat(
                            Jsoup.parse(answer).getElementById(id).text())
                    .isNotBlank());
        }
    }

    @ParameterizedTest
    @EnumSource(Room.class)
    void theNextRoomAndTheOneBeforeAreOneKeyAway(Room room) {
        var episode = lesson("Walked through");
        String way = room == Room.EXERCISES ? "exercises/1" : room.word();
        var page = Jsoup.parse(studio.browser().get(path(episode) + "/" + way).asString());
        assertThat(page.select(".room-foot a[data-key='.']").eachAttr("href"))
                .isEqualTo(room.after().map(next -> path(episode) + next.way()).stream()
                        .toList());
        assertThat(page.select(".room-foot a[data-key=',']").eachAttr("href"))
                .isEqualTo(room.before().map(next -> path(episode) + next.way()).stream()
                        .toList());
        assertThat(page.select(".room-foot kbd")).isNotEmpty();
    }

    @Test
    void aLessonOpensInTheRoomOfItsLine() {
        var episode = lesson("Opened");
        studio.browser()
                .redirects()
                .follow(false)
                .get(path(episode))
                .then()
                .statusCode(303)
                .header("Location", endsWith(path(episode) + "/line"));
    }

    @ParameterizedTest
    @CsvSource({
        "trial, publish",
        "promise, publish",
        "withdraw, publish",
        "number, publish",
        "exercises/9, exercises",
        "revisions/1/restore, revisions/1"
    })
    void theAddressOfAButtonLeadsToItsRoom(String button, String room) {
        var episode = lesson("Asked for again");
        studio.browser()
                .redirects()
                .follow(false)
                .get(path(episode) + "/" + button)
                .then()
                .statusCode(303)
                .header("Location", endsWith(path(episode) + "/" + room));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "line",
                "exercises",
                "exercises/1",
                "sound",
                "notes",
                "walkthrough",
                "script",
                "facts",
                "publish",
                "promise",
                "withdraw",
                "trial",
                "number",
                "revisions",
                "revisions/1/restore",
                "notes/draft",
                "notes/look",
                "line/draft"
            })
    void somebodyElsesLessonIsNotThere(String way) {
        for (String path : List.of(path(studio.strangersEpisode), "/desk/episodes/no-such-id")) {
            studio.form()
                    .formParam("notes", "Mine.")
                    .post(path + "/" + way)
                    .then()
                    .statusCode(404);
        }
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                "/line",
                "/exercises",
                "/exercises/1",
                "/sound",
                "/notes",
                "/walkthrough",
                "/script",
                "/facts",
                "/publish",
                "/calendar",
                "/revisions",
                "/revisions/1"
            })
    void somebodyElsesLessonCannotBeRead(String way) {
        var theirs = path(studio.strangersEpisode) + way;
        studio.browser().redirects().follow(false).get(theirs).then().statusCode(404);
        studio.site.browser().redirects().follow(false).get(theirs).then().statusCode(303);
    }

    @ParameterizedTest
    @MethodSource("rooms")
    void noOtherSiteCanSendAForm(Typed typed) {
        var episode = lesson("Not from elsewhere");
        var before = studio.document(episode);
        var room = open(episode, typed);
        for (String end : List.of("", "/draft")) {
            room.send(studio.browser().header("Sec-Fetch-Site", "cross-site"), end)
                    .then()
                    .statusCode(403);
        }
        assertThat(studio.document(episode)).isEqualTo(before);
    }

    @ParameterizedTest
    @ValueSource(strings = {"line", "exercises/1", "sound", "notes", "walkthrough", "script", "facts"})
    void theSignsFollowWhatIsSaved(String way) {
        var episode = lesson("Signs");
        var before = Jsoup.parse(
                studio.browser().get(path(episode) + "/" + way + "/signs").asString());
        assertThat(before.select("#rooms a")).hasSize(Room.values().length);
        studio.change(episode, edit -> edit.notes("![](bars:40-41)"));
        var after = Jsoup.parse(
                studio.browser().get(path(episode) + "/" + way + "/signs").asString());
        assertThat(after.select("#rooms .rooms-open").eachText()).contains("Notes");
        assertThat(after.select("#room-remarks").text().contains("bars:40-41")).isEqualTo(way.equals("notes"));
    }

    @Test
    void whatIsToBeMendedIsSaidInItsOwnRoomAlone() {
        var episode = studio.episode("Not yet");
        studio.change(
                episode, edit -> edit.mainLine(new LineSource("", Studio.LINE)).notes("![](bars:40-41)"));
        var notes = Jsoup.parse(studio.browser().get(path(episode) + "/notes").asString());
        assertThat(notes.select(".room-remarks").text()).contains("bars:40-41", "its bars are 1 to 1");
        assertThat(notes.select("nav.rooms .rooms-open").eachText()).containsExactly("Notes", "Facts and rights");
        studio.browser().get(path(episode) + "/line").then().body(not(containsString("bars:40-41")));
    }

    @Test
    void aLookAtTheWholeIsToldWhereItIsHeldUp() {
        var episode = studio.episode("Held");
        OpenRoom.of(studio, episode, "notes")
                .press("trial")
                .then()
                .statusCode(303)
                .header("Location", endsWith(path(episode) + "/publish"));
        studio.write(episode, Studio.LINE);
        OpenRoom.of(studio, episode, "notes")
                .type("notes", "Seen too.")
                .press("trial")
                .then()
                .statusCode(303)
                .header("Location", containsString("/preview/"));
        assertThat(studio.document(episode).notes()).isEqualTo("Seen too.");
    }

    private static Episode lesson(String title) {
        var episode = studio.episode(title);
        studio.change(episode, edit -> edit.mainLine(new LineSource("", Studio.LINE))
                .exercises(List.of(new LineSource("Slowly", "bar 1\n1-4 E0\n"))));
        return episode;
    }

    /** Opened, and typed in: of fields of one name the first. */
    private static OpenRoom open(Episode episode, Typed typed) {
        var room = OpenRoom.of(studio, episode, typed.way());
        var all = new ArrayList<>(room.all(typed.field()));
        all.set(0, typed.text());
        return room.type(typed.field(), all.toArray(String[]::new));
    }

    private static String path(Episode episode) {
        return "/desk/episodes/" + episode.id();
    }
}
