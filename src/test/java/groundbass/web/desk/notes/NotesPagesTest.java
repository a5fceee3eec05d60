package groundbass.web.desk.notes;

import static io.restassured.RestAssured.given;
import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.not;

import groundbass.PictureBytes;
import groundbass.document.LineSource;
import groundbass.web.desk.Studio;
import io.restassured.response.ValidatableResponse;
import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.Test;

class NotesPagesTest {
    static final Studio studio = new Studio();

    @AfterAll
    static void close() {
        studio.close();
    }

    @Test
    void notesAreShownAsStudentsSeeThemAndNothingIsSavedByLooking() {
        var episode = studio.episode("Only looking");
        studio.change(
                episode, edit -> edit.mainLine(new LineSource("", Studio.LINE)).notes("## Left hand"));
        String path = "/desk/episodes/" + episode.id() + "/notes";
        studio.browser().get(path).then().statusCode(200).body(containsString("Left hand</h"));
        studio.form()
                .formParam("notes", "**Relax.**\n\n![Bar one](bars:1)\n")
                .post(path + "/look")
                .then()
                .statusCode(200)
                .body(
                        containsString("<strong>Relax.</strong>"),
                        containsString("<svg"),
                        containsString("id=\"live-notes\""),
                        not(containsString("<html")));
        assertThat(studio.document(episode).notes()).isEqualTo("## Left hand");
    }

    @Test
    void aPictureIsTakenShownAndAskedForItsWords() {
        var episode = studio.episode("With a picture");
        String path = "/desk/episodes/" + episode.id();
        put(path, "").statusCode(422).body(containsString("Say in words what the picture shows"));
        String typed =
                put(path, "The thumb \"rests\"").statusCode(201).extract().path("typed");
        assertThat(typed).startsWith("![The thumb \"rests\"](picture:");
        String address =
                path + "/pictures/" + typed.replaceFirst(".*picture:", "").replace(")", "");
        studio.form()
                .formParam("notes", typed)
                .post(path + "/notes/look")
                .then()
                .body(containsString("src=\"" + address + "\" alt=\"The thumb &quot;rests&quot;\" width=\"40\""));
        studio.browser().get(address).then().statusCode(200).contentType("image/png");
        given().baseUri(studio.site.address())
                .redirects()
                .follow(false)
                .get(address)
                .then()
                .statusCode(401);
        studio.browser().get(path + "/notes").then().body(containsString("not in the notes"));

        studio.change(episode, edit -> edit.notes(typed));
        var asked = studio.browser().get(address + "/take-out");
        asked.then()
                .statusCode(200)
                .body(
                        containsString("Take this picture out of the lesson?"),
                        containsString("The notes still show it."),
                        containsString("You can put it back until"));
        assertThat(Studio.mistakes(asked.asString())).isEmpty();
        studio.form().post(address + "/take-out").then().statusCode(303);
        studio.browser().get(address).then().statusCode(404);
        var room = studio.browser().get(path + "/notes");
        room.then().body(containsString("and no such picture"), containsString("action=\"" + address + "/put-back\""));
        assertThat(Studio.mistakes(room.asString())).isEmpty();
        assertThat(studio.document(episode).notes()).isEqualTo(typed);
        studio.form().post(address + "/put-back").then().statusCode(303);
        studio.browser().get(path + "/notes").then().body(not(containsString("no such picture")));
        studio.form().post(path + "/pictures/abcdefgh12345678/take-out").then().statusCode(404);
    }

    private static ValidatableResponse put(String path, String words) {
        return studio.form()
                .contentType("application/octet-stream")
                .body(PictureBytes.png())
                .queryParam("name", "thumb.png")
                .queryParam("words", words)
                .put(path + "/pictures")
                .then();
    }

    @Test
    void withoutAScriptAPictureStandsAtTheEndOfTheNotes() {
        var episode = studio.episode("Without a script");
        studio.change(episode, edit -> edit.notes("Relax.\n"));
        String path = "/desk/episodes/" + episode.id();
        studio.form()
                .contentType("multipart/form-data")
                .multiPart("picture", "thumb.png", PictureBytes.png(), "image/png")
                .multiPart("words", "The thumb")
                .post(path + "/pictures")
                .then()
                .statusCode(303);
        assertThat(studio.document(episode).notes()).startsWith("Relax.\n\n![The thumb](picture:");
        studio.form()
                .contentType("multipart/form-data")
                .multiPart("picture", "thumb.png", "no picture".getBytes(StandardCharsets.UTF_8), "image/png")
                .multiPart("words", "The thumb")
                .post(path + "/pictures")
                .then()
                .statusCode(422)
                .body(containsString("neither a PNG nor a JPEG"), containsString("value=\"The thumb\""));
    }

    @Test
    void aPictureThatIsNotThereOrHasNoWordsIsToldInTheRoom() {
        var episode = studio.episode("Broken pictures");
        studio.change(episode, edit -> edit.notes("One.\n\n![a](picture:abcdefgh12345678)\n\n![b](picture:thumb)\n"));
        studio.browser()
                .get("/desk/episodes/" + episode.id() + "/notes")
                .then()
                .body(
                        containsString("Line 3 of the notes shows “picture:abcdefgh12345678”, and no such picture"),
                        containsString("Line 5 of the notes shows “picture:thumb”"));
    }
}
