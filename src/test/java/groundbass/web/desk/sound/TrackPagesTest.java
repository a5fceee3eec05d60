package groundbass.web.desk.sound;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.containsString;

import groundbass.catalog.episode.Episode;
import groundbass.document.BackingTrack;
import groundbass.document.EpisodeDocument;
import groundbass.web.desk.OpenRoom;
import groundbass.web.desk.Studio;
import java.io.IOException;
import java.net.Socket;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

public class TrackPagesTest {
    /**
     * For requests that are refused unread: a client in the middle of a longer body would see the door shut instead.
     */
    private static final byte[] SHORT = {1};

    static final Studio studio = new Studio();

    @AfterAll
    static void close() {
        studio.close();
    }

    @BeforeEach
    void waitUntilNobodyRemembersEarlierUploads() {
        studio.site.clock().advance(Duration.ofHours(1));
    }

    @Test
    void aRecordingIsTakenAndStandsInTheLessonOnceItIsSaved() {
        var episode = studio.episode("With a track");
        String row = studio.form()
                .contentType("application/octet-stream")
                .body(wav())
                .queryParam("name", "Slow band.wav")
                .put(path(episode))
                .then()
                .statusCode(201)
                .body(containsString("Slow band.wav: WAV, 0:01"))
                .extract()
                .asString();
        String id = row.replaceFirst("(?s).*name=\"track\" value=\"([a-z0-9]+)\".*", "$1");

        OpenRoom.of(studio, episode, "sound")
                .type("trackUsed", id)
                .type("trackTitle-" + id, "Slow")
                .type("trackKind-" + id, "DRUMS")
                .save();
        assertThat(tracks(episode)).extracting(BackingTrack::title).containsExactly("Slow");
        assertThat(tracks(episode)).extracting(BackingTrack::kind).containsExactly(BackingTrack.Kind.DRUMS);

        OpenRoom.of(studio, episode, "sound").type("trackUsed").save();
        assertThat(tracks(episode)).isEmpty();
        studio.browser()
                .get("/desk/episodes/" + episode.id() + "/sound")
                .then()
                .body(containsString("Slow band.wav: WAV"));

        OpenRoom.of(studio, episode, "sound").type("trackUsed", id).save();
        String address = path(episode) + "/" + id;
        var asked = studio.browser().get(address + "/take-out");
        asked.then().statusCode(200).body(containsString("It belongs to the lesson."));
        assertThat(Studio.mistakes(asked.asString())).isEmpty();
        studio.form().post(address + "/take-out").then().statusCode(303);
        assertThat(tracks(episode)).isEmpty();
        var room = studio.browser().get("/desk/episodes/" + episode.id() + "/sound");
        room.then().body(containsString("action=\"" + address + "/put-back\""));
        assertThat(Studio.mistakes(room.asString())).isEmpty();
        studio.form().post(address + "/put-back").then().statusCode(303);
        studio.browser()
                .get("/desk/episodes/" + episode.id() + "/sound")
                .then()
                .body(containsString("name=\"track\" value=\"" + id));
    }

    @Test
    void withoutScriptItComesAsAPartOfAFormAndIsKeptAtOnce() {
        var episode = studio.episode("Without script");
        studio.form()
                .contentType("multipart/form-data")
                .multiPart("file", "Band.wav", wav(), "audio/wav")
                .post(path(episode))
                .then()
                .statusCode(303);
        assertThat(tracks(episode)).extracting(BackingTrack::title).containsExactly("Band");
    }

    @Test
    void whatIsNoRecordingIsRefusedWithTheReason() {
        var episode = studio.episode("No recording");
        byte[] text = "This is a letter.".getBytes(StandardCharsets.UTF_8);
        studio.form()
                .contentType("audio/mpeg")
                .body(text)
                .put(path(episode) + "?name=song.mp3")
                .then()
                .statusCode(422)
                .body("detail", containsString("no WAV, FLAC or MP3"));
        var answer = studio.form()
                .contentType("multipart/form-data")
                .multiPart("file", "song.mp3", text, "audio/mpeg")
                .post(path(episode));
        answer.then().statusCode(422).body(containsString("no WAV, FLAC or MP3"));
        assertThat(Studio.mistakes(answer.asString())).isEmpty();
        assertThat(tracks(episode)).isEmpty();
    }

    @Test
    void aFormWithoutAFileSaysSo() {
        var episode = studio.episode("Nothing chosen");
        studio.form()
                .contentType("multipart/form-data")
                .multiPart("file", "", new byte[0], "application/octet-stream")
                .post(path(episode))
                .then()
                .statusCode(422)
                .body(containsString("Please fill this in"));
    }

    /** Refused by its announced length before a byte is read (RFC 9110 section 15.5.14), so the test sends no body. */
    @Test
    void moreThanTheLimitIsRefusedBeforeItIsSent() throws IOException {
        var episode = studio.episode("Too large");
        try (var socket = new Socket("127.0.0.1", studio.site.groundbass().port())) {
            String head = "PUT " + path(episode) + " HTTP/1.1\r\nHost: localhost\r\nSec-Fetch-Site: same-origin\r\n"
                    + "Cookie: session=" + studio.cookie.getValue() + "\r\nContent-Length: 100000001\r\n\r\n";
            socket.getOutputStream().write(head.getBytes(StandardCharsets.US_ASCII));
            socket.getOutputStream().flush();
            var answer = new byte[4000];
            int length = socket.getInputStream().read(answer);
            assertThat(new String(answer, 0, length, StandardCharsets.UTF_8))
                    .startsWith("HTTP/1.1 413")
                    .contains("application/problem+json");
        }
    }

    @Test
    void somebodyElsesEpisodeTakesNothing() {
        studio.form()
                .contentType("audio/wav")
                .body(wav())
                .put(path(studio.strangersEpisode))
                .then()
                .statusCode(404);
    }

    @Test
    void aRecordingOfAnotherLessonCannotBeNamed() {
        var one = studio.episode("One");
        var other = studio.episode("Other");
        studio.form()
                .contentType("multipart/form-data")
                .multiPart("file", "Band.wav", wav(), "audio/wav")
                .post(path(one));
        String id = tracks(one).get(0).upload().value();
        OpenRoom.of(studio, other, "sound")
                .type("track", id)
                .type("trackUsed", id)
                .save();
        assertThat(tracks(other)).isEmpty();
    }

    @Test
    void strangersAndOtherSitesSendNothing() {
        var episode = studio.episode("Closed door");
        studio.site
                .form()
                .contentType("audio/wav")
                .body(SHORT)
                .put(path(episode))
                .then()
                .statusCode(401);
        studio.browser()
                .header("Sec-Fetch-Site", "cross-site")
                .body(SHORT)
                .put(path(episode))
                .then()
                .statusCode(403);
    }

    @Test
    void tooManyRecordingsMustWait() {
        var episode = studio.episode("Many");
        for (int i = 0; i < 60; i++) {
            studio.form().contentType("audio/wav").body(new byte[0]).put(path(episode));
        }
        studio.form()
                .contentType("audio/wav")
                .body(SHORT)
                .put(path(episode))
                .then()
                .statusCode(429);
    }

    /** One second of silence: RIFF/WAVE with a "fmt " and a "data" chunk (Multimedia Programming Interface and
     * Data Specifications 1.0, IBM and Microsoft 1991). */
    public static byte[] wav() {
        int rate = 8000;
        var bytes = ByteBuffer.allocate(44 + 2 * rate).order(ByteOrder.LITTLE_ENDIAN);
        bytes.put(ascii("RIFF")).putInt(36 + 2 * rate).put(ascii("WAVEfmt ")).putInt(16);
        bytes.putShort((short) 1).putShort((short) 1).putInt(rate).putInt(2 * rate);
        bytes.putShort((short) 2).putShort((short) 16).put(ascii("data")).putInt(2 * rate);
        return bytes.array();
    }

    private static byte[] ascii(String text) {
        return text.getBytes(StandardCharsets.US_ASCII);
    }

    private static List<BackingTrack> tracks(Episode episode) {
        return document(episode).backingTracks();
    }

    private static EpisodeDocument document(Episode episode) {
        return studio.writing
                .draft(studio.site.educator(), episode.id())
                .orElseThrow()
                .document();
    }

    private static String path(Episode episode) {
        return "/desk/episodes/" + episode.id() + "/tracks";
    }
}
