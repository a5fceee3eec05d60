package groundbass.web.desk;

import static com.microsoft.playwright.assertions.PlaywrightAssertions.assertThat;
import static org.assertj.core.api.Assertions.assertThat;

import com.deque.html.axecore.playwright.AxeBuilder;
import com.microsoft.playwright.Locator;
import com.microsoft.playwright.Page;
import com.microsoft.playwright.Request;
import com.microsoft.playwright.options.ColorScheme;
import com.microsoft.playwright.options.FilePayload;
import groundbass.document.LineSource;
import java.nio.ByteBuffer;
import java.nio.ByteOrder;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

/** Working a line out by ear: a recording that never leaves the browser. */
@Tag("browser")
class BenchTest {
    private static final int RATE = 8000;
    private static final String LINE = "tempo 120\nbar 1\n1-4 A0\nbar 2\n1-4 A3\n";

    @RegisterExtension
    static final DeskVisit desk = new DeskVisit();

    private final List<Request> sent = new ArrayList<>();

    @Test
    void aRecordingIsMarkedSlowedComparedAndWrittenOnFrom() {
        var page = bench();
        page.locator("#bench [data-part=file]").setInputFiles(recording());
        assertThat(part(page, "work")).isVisible();
        assertThat(part(page, "name")).hasText("by-ear.wav");

        mark(page, 1);
        mark(page, 3);
        mark(page, 5);
        assertThat(page.locator("#bench [data-part=marks] li")).hasCount(3);
        seek(page, 3.5);
        assertThat(part(page, "place")).hasText("0:03.5, bar 2");
        part(page, "loop-bar").click();
        assertThat(part(page, "from")).hasValue("3.00");
        assertThat(part(page, "to")).hasValue("5.00");

        part(page, "speed").fill("50");
        part(page, "what").selectOption("both");
        part(page, "play").click();
        assertThat(part(page, "play")).hasText("Stop");
        part(page, "play").click();
        assertThat(part(page, "play")).hasText("Play");

        part(page, "write").click();
        assertThat(page.getByLabel("Bar 2, count 1-4", new Page.GetByLabelOptions().setExact(true)))
                .isFocused();
        assertThat(sent).isNotEmpty().allSatisfy(BenchTest::tellsNothingOfTheRecording);
        assertThat(desk.complaints()).isEmpty();
    }

    /** Half as fast takes twice as long at the same pitch: a period of 110 Hz (ISO 16: A2) stays 1/110 s. */
    @Test
    @SuppressWarnings("unchecked")
    void slowedSoundKeepsItsPitchAndTheWrittenLineFitsItsBars() {
        var page = bench();
        var found = (List<Number>) page.evaluate("""
                async (path) => {
                  const { cut, Stretcher, WrittenLine } = await import('/assets/parts.js');
                  const context = new OfflineAudioContext(1, 44100, 44100);
                  const sound = context.createBuffer(1, 4 * 44100, 44100);
                  sound.getChannelData(0).forEach((_, i, all) => (all[i] = Math.sin((2 * Math.PI * 110 * i) / 44100)));
                  const stretcher = new Stretcher();
                  const slow = await stretcher.stretch(context, cut(context, sound, 1, 3), 4, false);
                  const samples = slow.getChannelData(0);
                  let crossings = 0;
                  for (let i = 44101; i < 2 * 44100 + 1; i++) if (samples[i - 1] < 0 && samples[i] >= 0) crossings++;
                  const text = document.getElementById('mainLine').value;
                  const line = new WrittenLine(path, () => text, stretcher);
                  const under = await line.under(context, [{ bar: 2, from: 2, to: 5 }], 0, 6, 0.5);
                  const energy = (from, to) =>
                    under.getChannelData(0).subarray(from * 44100, to * 44100).reduce((sum, s) => sum + s * s, 0);
                  return [slow.duration, crossings, under.duration, energy(0, 3.9), energy(4, 10)];
                }""", page.locator("#bench").getAttribute("data-path"));
        assertThat(found.get(0).doubleValue()).isEqualTo(8.0);
        assertThat(found.get(1).doubleValue()).isBetween(109.0, 111.0);
        assertThat(found.get(2).doubleValue()).isEqualTo(12.0);
        assertThat(found.get(3).doubleValue()).as("before the bar").isLessThan(1e-6);
        assertThat(found.get(4).doubleValue()).as("in the bar").isGreaterThan(1);
    }

    @Test
    void theRecordingIsThereTomorrowAndCanBeRemoved() {
        var page = bench();
        part(page, "file").setInputFiles(recording());
        assertThat(part(page, "name")).hasText("by-ear.wav");
        mark(page, 1);
        assertThat(page.locator("#bench")).hasAttribute("data-kept", "1");
        page.reload();
        page.locator("#bench > summary").click();
        assertThat(part(page, "name")).hasText("by-ear.wav");
        assertThat(page.locator("#bench [data-part=marks] li")).hasCount(1);
        part(page, "remove").click();
        page.reload();
        page.locator("#bench > summary").click();
        assertThat(part(page, "work")).isHidden();
    }

    @Test
    void aLetterInAFieldMarksNothing() {
        var page = bench();
        part(page, "file").setInputFiles(recording());
        assertThat(part(page, "work")).isVisible();
        seek(page, 2);
        part(page, "play").focus();
        page.keyboard().press("t");
        assertThat(page.locator("#bench [data-part=marks] li")).hasCount(1);
        seek(page, 4);
        for (var field : List.of("first", "what")) {
            part(page, field).focus();
            page.keyboard().press("t");
        }
        assertThat(page.locator("#bench [data-part=marks] li")).hasCount(1);
    }

    @Test
    void whatIsNoSoundIsToldByItsName() {
        var page = bench();
        part(page, "file")
                .setInputFiles(new FilePayload("notes.txt", "text/plain", "no sound".getBytes(StandardCharsets.UTF_8)));
        assertThat(part(page, "word")).containsText("“notes.txt” cannot be read as sound");
    }

    @Test
    void theBenchHasNoBarriers() {
        var page = bench();
        part(page, "file").setInputFiles(recording());
        assertThat(part(page, "work")).isVisible();
        mark(page, 1);
        var violations = new AxeBuilder(page).include("#bench").analyze().getViolations();
        assertThat(violations.stream().map(violation -> violation.getId() + " " + violation.getNodes()))
                .isEmpty();
    }

    /** A request to this site whose body, in whatever form, is far too small for six seconds of sound. */
    private static void tellsNothingOfTheRecording(Request request) {
        assertThat(request.url())
                .matches(url -> url.startsWith(desk.studio().site.address()) || url.startsWith("blob:"));
        byte[] body = request.postDataBuffer();
        assertThat(body == null ? 0 : body.length).as(request.url()).isLessThan(4_000);
    }

    private static Locator part(Page page, String name) {
        return page.locator("#bench [data-part=" + name + "]");
    }

    private static void seek(Page page, double second) {
        part(page, "seek").fill(String.valueOf(second).replace(".0", ""));
    }

    private static void mark(Page page, double second) {
        seek(page, second);
        part(page, "mark").click();
    }

    private Page bench() {
        var episode = desk.studio().episode("By ear");
        var writing = desk.studio().writing;
        var draft = writing.draft(desk.studio().site.educator(), episode.id()).orElseThrow();
        var document =
                draft.document().edit().mainLine(new LineSource("", LINE)).done();
        Studio.done(writing.saveDraft(desk.studio().site.educator(), episode.id(), draft.version(), document));
        var page = desk.signedIn(1280, ColorScheme.LIGHT);
        page.onRequest(sent::add);
        desk.editor(page, episode);
        page.locator("#bench > summary").click();
        page.locator("[data-bar-spot='1']").waitFor();
        return page;
    }

    /** Six seconds of A2 as a WAV file. */
    private static FilePayload recording() {
        int samples = 6 * RATE;
        var wav = ByteBuffer.allocate(44 + 2 * samples).order(ByteOrder.LITTLE_ENDIAN);
        wav.put("RIFF".getBytes(StandardCharsets.US_ASCII)).putInt(36 + 2 * samples);
        wav.put("WAVEfmt ".getBytes(StandardCharsets.US_ASCII))
                .putInt(16)
                .putShort((short) 1)
                .putShort((short) 1);
        wav.putInt(RATE).putInt(2 * RATE).putShort((short) 2).putShort((short) 16);
        wav.put("data".getBytes(StandardCharsets.US_ASCII)).putInt(2 * samples);
        for (int i = 0; i < samples; i++) {
            wav.putShort((short) Math.round(20_000 * StrictMath.sin(2 * Math.PI * 110 * i / RATE)));
        }
        return new FilePayload("by-ear.wav", "audio/wav", wav.array());
    }
}
