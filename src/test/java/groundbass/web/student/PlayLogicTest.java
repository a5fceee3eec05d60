package groundbass.web.student;

import static org.assertj.core.api.Assertions.assertThat;

import com.microsoft.playwright.Page;
import com.microsoft.playwright.Route;
import groundbass.web.Browser;
import groundbass.web.Stage;
import groundbass.web.general.AssetFiles;
import groundbass.web.general.HomePage;
import groundbass.web.shell.Visitors;
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
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** What the play-along page decides without sound or a page, run where it runs: in a browser. */
@Tag("browser")
class PlayLogicTest {
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
                Visitors.NONE,
                pages -> List.of(new HomePage(pages, reader -> HomePage.View.EMPTY), new AssetFiles(new Assets())));
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

    /** Runs in the page with the exports of {@code module} at hand; what it returns, as JSON. */
    private static String run(String module, String script) {
        return (String) page.evaluate("async () => { const m = await import('/assets/" + module + "');" + BARS
                + "const result = await (async () => {" + script + "})(); return JSON.stringify(result,"
                + " (_, v) => v === Infinity ? 'end' : v); }");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "'' | '' | first:0,from:0,last:2,to:end",
                "1 | 1 | first:0,from:0,last:0,to:end",
                "2 | 2 | first:2,from:0,last:2,to:end",
                "1.3 | 2.1& | first:1,from:0.5,last:2,to:0.25",
                "1 | 2 | first:0,from:0,last:2,to:end",
                "2.2& | 2.4 | first:2,from:0.375,last:2,to:end",
                "' 2 . 2+ ' | 2,3 | first:2,from:0.375,last:2,to:0.75"
            })
    void bothEndsOfARangeArePlayed(String from, String to, String expected) {
        String read = run("play-loop.js", "return m.readRange('%s', '%s', bars).range".formatted(from, to));
        assertThat(read.replaceAll("[{}\"]", "")).isEqualTo(expected);
    }

    @ParameterizedTest
    @CsvSource({
        "3, 4, bar, from",
        "x, 2, form, from",
        "2, 1, backward, to",
        "1, 1.5, count, to",
        "2.3, 2.2, backward, to"
    })
    void whatIsNoRangeIsNamed(String from, String to, String problem, String field) {
        String found = "const p = m.readRange('%s', '%s', bars); return [p.problem, p.field]".formatted(from, to);
        assertThat(run("play-loop.js", found)).isEqualTo("[\"" + problem + "\",\"" + field + "\"]");
    }

    @ParameterizedTest
    @ValueSource(strings = {"1 1", "2 2", "1.3 2.1", "2.2& 2.3e", "1.4& 2"})
    void aRangeIsWrittenAsItWasTyped(String typed) {
        String script = "return m.writeRange(m.readRange(...'%s'.split(' '), bars).range, bars).join(' ')";
        assertThat(run("play-loop.js", script.formatted(typed))).isEqualTo('"' + typed + '"');
    }

    @Test
    void aDragInEitherDirectionChoosesTheSameNotes() {
        String script = """
                const a = {bar: 1, at: 0.25, toBar: 1, to: 0.375}, b = {bar: 2, at: 0.5, toBar: 2, to: 0.625};
                return [[a, b], [b, a]].map(([x, y]) => m.writeRange(m.rangeOf(x, y, bars), bars).join(' '))""";
        assertThat(run("play-loop.js", script)).isEqualTo("[\"1.2 2.3e\",\"1.2 2.3e\"]");
    }

    /** Bars 1 and 2 with endings 2 and 3: played 1 2 1 3 4; from 1 to 3 leads through the second ending. */
    @Test
    void aPassageIntoASecondEndingIsThePassInWhichItsEndsAreNeighbours() {
        String script = """
                const form = [[1, 1], [2, 1], [1, 2], [3, 1], [4, 1]].map(([number, pass], i) => bar(number, pass, 4000 * i));
                const a = {bar: 1, at: 0.5, toBar: 1, to: 0.75}, b = {bar: 3, at: 0, toBar: 3, to: 0.25};
                const typed = m.readRange('1', '3', form).range, drawn = m.rangeOf(a, b, form);
                return [typed, drawn, m.readRange('1', '2', form).range, m.readRange('1', '4', form).range]
                  .map(({first, last}) => [first, last])""";
        assertThat(run("play-loop.js", script)).isEqualTo("[[2,3],[2,3],[0,1],[0,4]]");
    }

    @Test
    void aDragInsideATripletReachesTheNextNamedCounts() {
        String script = """
                const a = {bar: 2, at: 1 / 12, toBar: 2, to: 1 / 6};
                return m.writeRange(m.rangeOf(a, a, bars), bars)""";
        assertThat(run("play-loop.js", script)).isEqualTo("[\"2.1e\",\"2.1\"]");
    }

    @Test
    void theFirstRoundMayBeginInTheMiddleOfTheRange() {
        String script = """
                const range = {first: 0, from: 0.5, last: 2, to: 0.5};
                const rounds = new m.Rounds({range, start: {index: 1, at: 0.25}, percent: 80});
                return [0, 1, 2, 3].map(n => { const s = rounds.step(n); return [s.round, s.index, s.from, s.to]; })""";
        assertThat(run("play-loop.js", script))
                .isEqualTo("[[0,1,0.25,\"end\"],[0,2,0,0.5],[1,0,0.5,\"end\"],[1,1,0,\"end\"]]");
    }

    @Test
    void theTempoClimbsAfterSoManyRoundsAndStaysAtItsTop() {
        String script = """
                const rounds = new m.Rounds({range: m.wholeLine(bars), percent: 92, faster: {every: 2, by: 5, most: 100}});
                return [0, 1, 2, 3, 4, 5, 99].map(round => rounds.percentIn(round))""";
        assertThat(run("play-loop.js", script)).isEqualTo("[92,92,97,97,100,100,100]");
    }

    @Test
    void muteGoesBeforeSoloAndSoloSilencesTheOthers() {
        String script = """
                const on = {level: 1, mute: false, solo: false};
                return [{bass: on, drums: on}, {bass: {...on, solo: true}, drums: on},
                  {bass: {...on, solo: true, mute: true}, drums: on}]
                  .map(balance => [m.heard('bass', balance), m.heard('drums', balance)])""";
        assertThat(run("play-mixer.js", script)).isEqualTo("[[1,1],[1,0],[0,0]]");
    }

    @Test
    void aFullMemoryForgetsWhatWasLongestUnused() {
        String script = """
                const kept = new m.Kept(10);
                kept.put('a', 1, 4); kept.put('b', 2, 4); kept.get('a'); kept.put('c', 3, 4);
                return [kept.get('a') ?? 0, kept.get('b') ?? 0, kept.get('c') ?? 0, kept.held]""";
        assertThat(run("play-kept.js", script)).isEqualTo("[1,0,3,8]");
    }

    /**
     * The pitch is the peak of the Fourier transform under a Hann window, looked for in steps of one cent
     * around the tone that went in, 60 cents either side. The tones are the open E (41.2 Hz) and higher ones; five cents
     * and one per cent are ours.
     */
    @ParameterizedTest
    @CsvSource({"41.2, 0.8", "41.2, 1.2", "110, 0.92", "110, 1.08", "110, 1.5", "392, 1.1"})
    void stretchingKeepsThePitchWithinFiveCentsAndTheLengthWithinOnePerCent(double hertz, double longer) {
        String script = """
                const rate = 44100, length = 2 * rate, tone = new Float32Array(length);
                for (let i = 0; i < length; i++)
                  for (let k = 1; k <= 4; k++) tone[i] += Math.sin(2 * Math.PI * k * %1$s * i / rate) / k / 2;
                const [out] = m.stretch([tone], rate, %2$s);
                const windowed = out.map((sample, i) => sample * (0.5 - 0.5 * Math.cos(2 * Math.PI * i / out.length)));
                const power = (hertz) => { // one bin of the transform by Goertzel's recurrence
                  const twice = 2 * Math.cos(2 * Math.PI * hertz / rate);
                  let one = 0, two = 0;
                  for (const sample of windowed) {
                    const next = sample + twice * one - two;
                    two = one;
                    one = next;
                  }
                  return one * one + two * two - twice * one * two;
                };
                let best = 0, most = 0;
                for (let cents = -60; cents <= 60; cents += 1) {
                  const p = power(%1$s * 2 ** (cents / 1200));
                  if (p > most) { most = p; best = cents; }
                }
                return [best, out.length / length / %2$s]""".formatted(hertz, longer);
        var figures = numbers(run("play-stretch.js", script));
        System.out.printf(
                "%.1f Hz, %.2f times longer: %.1f cents off, length %.4f of what was asked%n",
                hertz, longer, figures.get(0), figures.get(1));
        assertThat(Math.abs(figures.get(0))).as("cents").isLessThan(5);
        assertThat(figures.get(1)).isBetween(0.99, 1.01);
    }

    /** A recording whose bars wander is played bar by bar as it is, over each bar line and again in the next round. */
    @Test
    void theEducatorsOwnRecordingIsHeardAsItWasMade() {
        page.route("**/own.wav", route -> route.fulfill(new Route.FulfillOptions().setBodyBytes(noise(4))));
        String script = """
                const {Score, Take} = await import('/assets/play-score.js');
                const {Clock} = await import('/assets/play-clock.js');
                const {Rounds, wholeLine} = await import('/assets/play-loop.js');
                const take = Object.assign(Object.create(Take.prototype), {percent: 100, bpm: 60, bars, events: []});
                const band = {score: new Score({rate: 44100, stems: [], takes: [take]}), open() {}};
                const marks = [[1, 1, 1], [1, 2, 2.03], [2, 1, 3.01]];
                const track = {url: '/own.wav', title: 'Own', endSeconds: 4,
                  bars: marks.map(([bar, pass, seconds]) => ({bar, pass, round: 1, seconds}))};
                const [{source}] = m.ownTracks({tracks: [track]}, document.baseURI, band);
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
        var found = numbers(run("play-own.js", script));
        assertThat(found.get(0)).as("greatest difference between two samples").isLessThan(1e-4);
        assertThat(found.get(1)).isEqualTo(3);
    }

    @Test
    void aStartInsideABarIsCountedAWholeBarAndOn() {
        String script = """
                const beats = [0, 1000, 2000, 3000].map((frame, i) => ({frame, accent: i === 0}));
                const take = {countIn: {frames: 4000, beats}, bars: [{start: 3000}, {start: 4000}]};
                return [m.counted(take, 0, 0), m.counted(take, 1, 0), m.counted(take, 1, 1500)]
                  .map(c => c.frames + ':' + c.beats.map(b => b.number).join(''))""";
        assertThat(run("play-count-in.js", script)).isEqualTo("[\"3000:1234\",\"4000:1234\",\"5500:123412\"]");
    }

    @Test
    void stretchingSilenceOrNothingIsHarmless() {
        String script = """
                return [m.stretch([new Float32Array(0)], 44100, 1.1)[0].length,
                  Math.max(...m.stretch([new Float32Array(5000)], 44100, 1.1)[0])]""";
        assertThat(run("play-stretch.js", script)).isEqualTo("[0,0]");
    }

    @Test
    void anAttackAtTheStartIsNotTouched() {
        String script = """
                const tone = Float32Array.from({length: 20000}, (_, i) => Math.sin(i * i / 1000) * Math.exp(-i / 3000));
                const [out] = m.stretch([tone], 44100, 1.2, true);
                return tone.slice(0, 500).every((sample, i) => sample === out[i])""";
        assertThat(run("play-stretch.js", script)).isEqualTo("true");
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
