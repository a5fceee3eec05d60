package groundbass.web.student;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Page;
import com.microsoft.playwright.Route;
import groundbass.web.Browser;
import groundbass.web.EmptyHome;
import groundbass.web.Stage;
import groundbass.web.general.AssetFiles;
import groundbass.web.shell.PrincipalResolver;
import groundbass.web.view.Assets;
import java.io.ByteArrayInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.Random;
import javax.sound.sampled.AudioFileFormat;
import javax.sound.sampled.AudioFormat;
import javax.sound.sampled.AudioInputStream;
import javax.sound.sampled.AudioSystem;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/** How the educator's own recording is played along to, with the browser's own decoder and sound. */
@Tag("browser")
class OwnRecordingTest {
    /** Two bars of 4/4 with all their counts, the first played twice, 1000 frames a count. */
    private static final String BARS = """
            const bar = (number, pass, start) => ({bar: number, pass, start, frames: 4000, length: 1,
              counts: [1, 2, 3, 4].flatMap(n => ["", "e", "&", "a"].map(quarter => n + quarter)).map((count, i) =>
                ({count, at: i / 16, frame: start + 250 * i})), events: []});
            const bars = [bar(1, 1, 4000), bar(1, 2, 8000), bar(2, 1, 12000)];
            """;

    static Browser browser;
    static Stage stage;
    static Page page;

    @BeforeAll
    static void open() {
        browser = Browser.open();
        stage = Stage.at(
                "http://localhost:8420",
                PrincipalResolver.NONE,
                pages -> List.of(EmptyHome.of(pages), new AssetFiles(new Assets())));
        page = browser.page();
        page.navigate("http://localhost:" + stage.port() + "/");
    }

    @AfterAll
    static void close() {
        if (stage != null) {
            stage.close();
            browser.close();
        }
    }

    /** Runs in the page with two bars at hand; what it returns, as JSON. */
    private static String run(String script) {
        return (String) page.evaluate("async () => { " + BARS + "const result = await (async () => {" + script
                + "})(); return JSON.stringify(result); }");
    }

    /** A recording whose bars wander is played bar by bar as it is, over each bar line and again in the next round. */
    @Test
    void theEducatorsOwnRecordingIsHeardAsItWasMade() {
        page.route("**/own.wav", route -> route.fulfill(new Route.FulfillOptions().setBodyBytes(noise(4))));
        String script = """
                const {Clock, ownTracks, Rounds, Score, Take, wholeLine} = await import('/assets/parts.js');
                const take = Object.assign(Object.create(Take.prototype), {percent: 100, bpm: 60, bars, events: []});
                const band = {score: new Score({rate: 44100, stems: [], takes: [take]}), open() {}};
                const marks = [[1, 1, 1], [1, 2, 2.03], [2, 1, 3.01]];
                const track = {url: '/own.wav', title: 'Own', endSeconds: 4,
                  bars: marks.map(([bar, pass, seconds]) => ({bar, pass, round: 1, seconds}))};
                const [{source}] = ownTracks({tracks: [track]}, document.baseURI, band);
                const context = new OfflineAudioContext(1, 6 * 44100, 44100);
                source.open(context);
                const rounds = new Rounds({range: wholeLine(source.score.bars), percent: 100});
                await source.load([0, 1, 2].map(n => rounds.step(n)));
                const clock = new Clock({context, source, rounds, outputs: new Map([['track', context.destination]])});
                clock.begin(0);
                for (let until = 0; clock.n < 6; until += 0.1) clock.fill(until);
                const heard = (await context.startRendering()).getChannelData(0);
                const wav = await (await fetch('/own.wav')).arrayBuffer();
                const made = (await context.decodeAudioData(wav)).getChannelData(0);
                let worst = 0;
                for (let i = 0; i < 3 * 44100 - 450; i++)
                  for (const round of [0, 3 * 44100]) worst = Math.max(worst, Math.abs(heard[round + i] - made[44100 + i]));
                return [worst, source.score.bars.length]""";
        var found = numbers(run(script));
        assertThat(found.get(0)).as("greatest difference between two samples").isLessThan(1e-4);
        assertThat(found.get(1)).isEqualTo(3);
    }

    /** Written by the JDK's own sound classes. */
    private static byte[] noise(int seconds) {
        var samples = new byte[2 * 44_100 * seconds];
        new Random(20260202).nextBytes(samples);
        var out = new ByteArrayOutputStream();
        var format = new AudioFormat(44_100, 16, 1, true, false);
        var sound = new AudioInputStream(new ByteArrayInputStream(samples), format, samples.length / 2);
        try {
            AudioSystem.write(sound, AudioFileFormat.Type.WAVE, out);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return out.toByteArray();
    }

    private static List<Double> numbers(String json) {
        return List.of(json.replaceAll("[\\[\\]]", "").split(",")).stream()
                .map(Double::valueOf)
                .toList();
    }
}
