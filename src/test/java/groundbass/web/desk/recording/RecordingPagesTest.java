package groundbass.web.desk.recording;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.allOf;
import static org.hamcrest.Matchers.containsString;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.greaterThan;
import static org.hamcrest.Matchers.hasSize;
import static org.hamcrest.Matchers.lessThan;
import static org.hamcrest.Matchers.not;

import groundbass.Parts;
import groundbass.audio.Wav;
import groundbass.document.BarMap;
import groundbass.groove.Band;
import groundbass.linetext.LineText;
import groundbass.performance.Performance;
import groundbass.sound.mix.Balance;
import groundbass.sound.mix.BandTrack;
import groundbass.sound.mix.BarSounds;
import groundbass.sound.mix.Mix;
import groundbass.store.BlobFolder;
import groundbass.web.desk.OpenRoom;
import groundbass.web.desk.Sent;
import groundbass.web.desk.Studio;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.Test;

class RecordingPagesTest {
    private static final String LINE = """
            tempo 120
            bar 1 over Am7
            1    A0, A0
            2    rest, E3
            3-4  A5
            bar 2 over D9
            1-2  D2
            3    rest
            4    D5, E3
            """;

    static final Studio studio = new Studio();

    @AfterAll
    static void close() {
        studio.close();
    }

    @Test
    void theBarsOfARecordingAreFoundCorrectedAndKept() throws IOException {
        var episode = studio.episode("With a band");
        var line = LineText.read(LINE).line();
        var performance = Performance.of(line);
        var sounds = BarSounds.of(performance, Band.of(performance));
        byte[] wav = Wav.bytes(new BandTrack(performance, sounds, Mix.WITHOUT_BASS, Balance.EVEN.times(0.5)));
        var jdbi = studio.site.groundbass().database().jdbi();
        var blobs = new BlobFolder(studio.site.data().resolve("files"), studio.site.clock());
        var uploads = Parts.over(jdbi, studio.site.clock()).uploads(blobs);
        String id = uploads.accept(studio.site.educator(), episode.id(), "band.wav", new ByteArrayInputStream(wav))
                .result()
                .orElseThrow()
                .id()
                .value();
        studio.write(episode, LINE);
        OpenRoom.of(studio, episode, "sound")
                .type("trackUsed", id)
                .type("trackTitle-" + id, "Band")
                .type("trackKind-" + id, "WITHOUT_BASS")
                .save();
        String path = "/desk/episodes/" + episode.id() + "/tracks/" + id;

        Parts.over(jdbi, studio.site.clock()).recordings(blobs).listen();
        studio.browser()
                .get(path + "/sound")
                .then()
                .statusCode(200)
                .body("state", equalTo("ready"))
                .body("format", equalTo("WAV"))
                .body("peaks.size()", greaterThan(700))
                .body("integrated", allOf(greaterThan(-28f), lessThan(-12f)));
        studio.browser().get(path + "/wave.svg").then().statusCode(200).body(containsString("<path"));
        studio.browser().get("/desk/episodes/" + episode.id() + "/sound").then().body(containsString("LUFS"));

        // the count-in takes two seconds at 120 beats a minute, and so does each bar
        studio.browser()
                .get(path + "/bars")
                .then()
                .statusCode(200)
                .body("kept", equalTo(false))
                .body("bars", hasSize(2))
                .body("bars[0].seconds", allOf(greaterThan(1.97f), lessThan(2.03f)))
                .body("bars[1].seconds", allOf(greaterThan(3.97f), lessThan(4.03f)))
                .body("end", allOf(greaterThan(5.9f), lessThan(6.1f)));

        studio.form()
                .contentType("application/json")
                .body("{\"bars\":[{\"bar\":1,\"pass\":1,\"round\":1,\"seconds\":2.01},"
                        + "{\"bar\":2,\"pass\":1,\"round\":1,\"seconds\":3.99}],\"end\":6}")
                .put(path + "/bars")
                .then()
                .statusCode(204);
        studio.browser().get(path + "/bars").then().body("kept", equalTo(true)).body("bars[0].seconds", equalTo(2.01f));
        var map = studio.writing
                .draft(studio.site.educator(), episode.id())
                .orElseThrow()
                .document()
                .backingTracks()
                .get(0)
                .map();
        assertThat(map.bars()).hasSize(2).last().isEqualTo(new BarMap.Start(2, 1, 1, 3.99));

        OpenRoom.of(studio, episode, "sound")
                .type("trackTitle-" + id, "Band, again")
                .save();
        studio.browser().get(path + "/bars").then().body("kept", equalTo(true)); // the form does not lose it
    }

    @Test
    void aMapThatRunsBackwardIsRefused() {
        assertThat(new BarMap(List.of(new BarMap.Start(1, 1, 1, 2), new BarMap.Start(2, 1, 1, 1)), 3).runsForward(10))
                .isFalse();
        assertThat(new BarMap(List.of(new BarMap.Start(1, 1, 1, 2)), 20).runsForward(10))
                .isFalse();
        assertThat(BarMap.NONE.runsForward(10)).isTrue();
        var episode = studio.episode("Without a band");
        studio.browser()
                .get("/desk/episodes/" + episode.id() + "/tracks/aaaaaaaaaaaaaaaa/bars")
                .then()
                .statusCode(404);
    }

    @Test
    void theRecordingIsServedToItsOwnerWholeAndInParts() {
        var episode = studio.episode("Served");
        String path = Sent.path(episode, Sent.clicks(studio, episode));
        studio.browser()
                .get(path + "/recording")
                .then()
                .statusCode(200)
                .contentType("audio/wav")
                .header("Cache-Control", containsString("private"))
                .header("Accept-Ranges", "bytes")
                .header("Content-Length", String.valueOf(Sent.wav().length));
        byte[] part = studio.browser() // RFC 9110 section 14.2
                .header("Range", "bytes=0-3")
                .get(path + "/recording")
                .then()
                .statusCode(206)
                .header("Content-Range", equalTo("bytes 0-3/" + Sent.wav().length))
                .extract()
                .asByteArray();
        assertThat(new String(part, StandardCharsets.US_ASCII)).isEqualTo("RIFF");
        studio.site.browser().get(path + "/recording").then().statusCode(not(equalTo(200)));
        String strangers =
                path.replace(episode.id().value(), studio.strangersEpisode.id().value());
        studio.browser().get(strangers + "/recording").then().statusCode(404);
        studio.browser().get(strangers).then().statusCode(404);
        studio.browser()
                .get("/desk/episodes/" + episode.id() + "/sound")
                .then()
                .body(allOf(containsString(path), containsString("Bars of this recording")));
    }

    @Test
    void withoutScriptsThePageShowsFactsAndWave() {
        var episode = studio.episode("Plain");
        String path = Sent.path(episode, Sent.clicks(studio, episode));
        var html = studio.browser().header("Accept-Language", "de").get(path).asString();
        assertThat(html).contains("LUFS", "dBTP", "0:09 min", path + "/wave.svg", "Takte setzen");
        assertThat(Studio.mistakes(html)).isEmpty();
    }

    @Test
    void beforeAnybodyHasListenedThePageSaysSo() {
        var episode = studio.episode("Just sent");
        var html = studio.browser()
                .get(Sent.path(episode, Sent.unheard(studio, episode)))
                .asString();
        assertThat(html)
                .contains("still listening", "does not belong to the saved lesson")
                .doesNotContain("wave.svg");
    }

    @Test
    void barsAreNotSavedOverThoseThatAnotherWindowSaved() {
        var episode = studio.episode("Two windows");
        String path = Sent.path(episode, Sent.clicks(studio, episode)) + "/bars";
        String seen = studio.browser().get(path).header("ETag");
        String map = "{\"bars\":[{\"bar\":1,\"pass\":1,\"round\":1,\"seconds\":%s}],\"end\":6}";
        var json = "application/json";
        studio.form()
                .contentType(json)
                .header("If-Match", seen)
                .body(map.formatted("1"))
                .put(path)
                .then()
                .statusCode(204);
        String saved = studio.form() // RFC 9110 section 13.1.1
                .contentType(json)
                .header("If-Match", seen)
                .body(map.formatted("2"))
                .put(path)
                .then()
                .statusCode(412)
                .extract()
                .header("ETag");
        studio.browser().get(path).then().body("bars[0].seconds", equalTo(1.0f));
        studio.form()
                .contentType(json)
                .header("If-Match", saved)
                .body(map.formatted("2"))
                .put(path)
                .then()
                .statusCode(204);
    }
}
