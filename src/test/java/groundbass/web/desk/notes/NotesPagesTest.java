package groundbass.web.desk.notes;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.not;

import groundbass.document.LineSource;
import groundbass.web.desk.Studio;
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
}
