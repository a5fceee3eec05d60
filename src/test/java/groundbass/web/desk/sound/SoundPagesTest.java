package groundbass.web.desk.sound;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.not;

import groundbass.document.DocumentSettings;
import groundbass.document.GrooveSource;
import groundbass.web.desk.OpenRoom;
import groundbass.web.desk.Studio;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.Test;

class SoundPagesTest {
    static final Studio studio = new Studio();

    @AfterAll
    static void close() {
        studio.close();
    }

    @Test
    void grooveAndTemposAreSavedAndTheNamesOfTheWalkthroughStay() {
        var episode = studio.episode("Shuffled");
        studio.change(episode, edit -> edit.settings(new DocumentSettings("de", "50", "2", "international")));
        OpenRoom.of(studio, episode, "sound")
                .type("grooveName", "Shuffle")
                .type("grooveFeel", "50")
                .type("grooveBass", "direct")
                .type("grooveChords", "guitar")
                .type("settings.tempos", "60 100")
                .type("settings.rounds", "3")
                .save()
                .then()
                .statusCode(303);
        assertThat(studio.document(episode).groove())
                .isEqualTo(new GrooveSource("Shuffle", "", "50", "direct", "guitar"));
        assertThat(studio.document(episode).settings())
                .isEqualTo(new DocumentSettings("de", "60 100", "3", "international"));
    }

    @Test
    void drumsAreReadWhileTheyAreTypedAndNothingIsSaved() {
        var episode = studio.episode("Drummed");
        studio.form()
                .formParam("groove", "no groove at all")
                .post("/desk/episodes/" + episode.id() + "/sound/look")
                .then()
                .statusCode(200)
                .body(
                        containsString("id=\"findings-groove\""),
                        containsString("finding"),
                        not(containsString("<html")));
        assertThat(studio.document(episode).groove().text()).isEmpty();
    }
}
