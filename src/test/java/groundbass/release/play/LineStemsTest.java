package groundbass.release.play;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;

import groundbass.audio.FlacDecoder;
import groundbass.groove.GrooveLibrary;
import groundbass.linetext.LineText;
import groundbass.performance.Performance;
import groundbass.performance.Playing;
import groundbass.release.play.PlayManifest.Fingered;
import groundbass.release.play.PlayManifest.Section;
import groundbass.release.play.PlayManifest.Segment;
import groundbass.score.Line;
import groundbass.signal.Sound;
import groundbass.sound.mix.BandTrack;
import groundbass.sound.mix.Mix;
import groundbass.sound.mix.Stem;
import groundbass.store.BlobFolder;
import groundbass.store.Blobs;
import groundbass.store.SettableClock;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class LineStemsTest {
    /** A note rings over the bar line, one is slid to over it, some come with grace notes, a bar is repeated. */
    private static final Line LINE = LineText.read("""
            tempo 140
            feel  swing 8ths 2:1
            repeat start
            bar 1 over Am7
            1    A0
            1&   rest
            2    E3, G2 pop
            3    D5 ring
            4    A2
            repeat end x2
            bar 2 over D9
            1    A5 slide
            2    A3 hammer from 2
            3    Ex, E3 ghost
            4    G5
            bar 3 over D9
            1    A3 hammer from 2
            2-4  rest
            """).line();

    /** Frames of 12 ms. */
    private static final int ROOM = 529;

    private Blobs blobs;
    private Tape tape;
    private LineStems.Written written;

    @AfterEach
    void closeTheTape() throws IOException {
        tape.close();
    }

    @BeforeEach
    void write(@TempDir Path folder) throws IOException {
        blobs = new BlobFolder(folder, SettableClock.at("2026-03-02T09:00:00Z"));
        tape = Tape.record(LINE, GrooveLibrary.suited(LINE), 90);
        written = LineStems.write("line", tape, StemForm.EXACT, blobs);
    }

    @Test
    void theDecodedSegmentsLaidDownAtTheirBarsAreTheStem() throws IOException {
        for (var stem : Stem.values()) {
            var laid = new float[(int) written.tempo().endFrame() + 15 * 44_100];
            var file = written.tempo().files().get(stem.word());
            byte[] bytes = bytes(file.url());
            for (int i = 0; i < file.segments().size(); i++) {
                var segment = file.segments().get(i);
                add(laid, decoded(bytes, segment), written.tempo().bars().get(i).startFrame() - segment.lead());
            }
            var mix = new Mix(EnumSet.of(stem), false);
            float[] heard = middle(page(mix), (int) written.tempo().endFrame());
            // equal power, as Web Audio pans a mono source; between both ears
            double angle = (file.pan() + 1) * Math.PI / 4;
            double share = (Math.cos(angle) + Math.sin(angle)) / 2;
            for (int i = 0; i < heard.length; i++) {
                laid[i] *= (float) share;
            }
            // until the room answers, 13 ms at the earliest (rule: room-figures), nothing but the stem is heard
            int first = firstHeard(laid);
            assertThat(farthest(
                            Arrays.copyOfRange(heard, first, first + ROOM),
                            Arrays.copyOfRange(laid, first, first + ROOM)))
                    .as(stem.word())
                    .isLessThan(1e-4f);
            assertThat(alike(heard, laid, 0, heard.length))
                    .as("all of " + stem.word())
                    .isGreaterThan(0.98);
            for (var bar : written.tempo().bars()) {
                assertStandsThere(heard, laid, (int) bar.startFrame(), stem.word() + " in bar " + bar.bar());
            }
            assertThat(peak(heard, 0, heard.length)).as(stem.word()).isGreaterThan(0.01f);
        }
    }

    @Test
    void theStemsSumToTheMix() {
        int end = (int) written.tempo().endFrame();
        var sum = new float[end];
        for (var stem : List.of(Stem.BASS, Stem.DRUMS, Stem.CHORDS)) {
            float[] one = left(page(new Mix(EnumSet.of(stem), false)), end);
            for (int i = 0; i < end; i++) {
                sum[i] += one[i];
            }
        }
        float[] mix = left(page(new Mix(Mix.FULL.stems(), false)), end);
        assertThat(farthest(mix, sum)).isLessThan(1e-4f);
    }

    @Test
    void theManifestSaysWhenEverythingIsPlayed() {
        var tempo = written.tempo();
        var performance = Performance.of(LINE, Playing.at(90));
        assertThat(tempo.bars()).extracting(PlayManifest.Bar::bar).containsExactly(1, 1, 2, 3);
        assertThat(tempo.bars()).extracting(PlayManifest.Bar::pass).containsExactly(1, 2, 1, 1);
        // 140 beats a minute at 90 % are 126: a bar of four takes 4 * 60 / 126 s
        double bar = 4 * 60 / 126.0 * 44_100;
        assertThat(tempo.bpm()).isEqualTo(126);
        assertThat(tempo.countIn().frames()).isEqualTo(Math.round(bar));
        assertThat(tempo.countIn().beats()).hasSize(4);
        assertThat(tempo.countIn().quietFrames()).isEqualTo(17_640); // 0.4 s (rule: pre-roll)
        for (int i = 0; i < 4; i++) {
            assertThat(tempo.bars().get(i).startFrame()).isEqualTo(Math.round(bar * (i + 1)));
        }
        assertThat(tempo.endFrame()).isEqualTo(Math.round(bar * 5));
        // the second of two swung eighths comes after two thirds of the beat
        var counts = tempo.bars().get(0).counts();
        assertThat(counts.get(2).count()).isEqualTo("1&");
        assertThat(counts.get(2).at()).isEqualTo("1/8");
        assertThat(counts.get(2).frame()).isEqualTo(Math.round(bar + bar / 4 * 2 / 3));
        var events = tempo.bars().get(0).events();
        assertThat(events.get(0).at()).isEqualTo("0");
        assertThat(events.get(0).to()).isEqualTo("1/8");
        assertThat(events).isNotEmpty().noneMatch(event -> event.at().equals("1/8")); // a rest is not lit
        assertThat(performance.bars()).hasSize(4);
    }

    @Test
    void aNoteBelongsWhereItsStringWasStruck() throws IOException {
        var bass = written.tempo().files().get("bass").segments();
        byte[] file = bytes("line-90-bass.flac");
        int beat = (int) (60 / 126.0 * 44_100);
        // bar 2 begins with a slide out of bar 1, as it is played the second time
        assertThat(peak(decoded(file, bass.get(2)), 0, beat / 2)).isZero();
        int barLine = 4 * beat;
        float[] first = Arrays.copyOfRange(decoded(file, bass.get(0)), barLine + beat / 4, barLine + beat / 2);
        float[] second = Arrays.copyOfRange(decoded(file, bass.get(1)), barLine + beat / 4, barLine + beat / 2);
        assertThat(farthest(first, second)).isGreaterThan(0.01f);
        // the grace note before bar 3 sounds before its bar line
        assertThat(bass.get(3).lead()).isPositive();
        assertThat(bass.get(2).lead()).isZero();
    }

    @Test
    void aSlideOutOfSilenceIsASoundOfItsOwnBar() throws IOException {
        var line = LineText.read("""
                bar 1
                1    A2
                2-4  rest
                bar 2
                1-4  A5 slide
                """).line();
        try (var other = Tape.record(line, GrooveLibrary.suited(line), 100)) {
            assertThat(peak(other.bar(Stem.BASS, 1).samples(), 0, 22_050)).isPositive();
        }
    }

    @Test
    void equalBarsAreStoredOnce() {
        var click = written.tempo().files().get("click").segments();
        assertThat(click.get(1)).isEqualTo(click.get(2));
        var bass = written.tempo().files().get("bass").segments();
        assertThat(bass.get(2)).isNotEqualTo(bass.get(1));
    }

    @Test
    void theManifestSurvivesItsJson() {
        var tempos = List.of(written.tempo(), small().tempo().withExact("line-90-exact.json"));
        var sections = List.of(new Section("Verse", 1));
        var strings = List.of("G", "D", "A", "E");
        var places = List.of(new Fingered(1, "0", 3, "0"), new Fingered(2, "1/2", 4, "x"));
        var manifest = new PlayManifest(
                1, "line", "Line", 44_100, 4, List.of("bass"), tempos, List.of(), sections, strings, places);
        assertThat(PlayJson.read(PlayJson.write(manifest))).isEqualTo(manifest);
    }

    /** Whatever the form, the same frames stand at the same times. */
    @Test
    void theSmallerFormHasTheFramesOfTheOther() throws IOException {
        var small = small();
        assertThat(small.tempo().bars()).isEqualTo(written.tempo().bars());
        assertThat(small.tempo().countIn().soundFrames())
                .isEqualTo(written.tempo().countIn().soundFrames());
        for (var stem : Stem.values()) {
            var file = small.tempo().files().get(stem.word());
            assertThat(file.decoding()).isEqualTo(new PlayManifest.Decoding(48_000, 960)); // rule: small-sound
            assertThat(file.segments())
                    .extracting(Segment::frames, Segment::lead)
                    .isEqualTo(written.tempo().files().get(stem.word()).segments().stream()
                            .map(segment -> tuple(segment.frames(), segment.lead()))
                            .toList());
        }
    }

    private LineStems.Written small() {
        try {
            return LineStems.write("line", tape, StemForm.SMALL, blobs);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** What was made of other sound has another name. */
    @Test
    void withoutLossAFileIsCalledByItsContent() {
        var bass = written.files().get("line-90-bass.flac");
        String name = ExactStems.named("line-90-bass.flac", bass);
        assertThat(name)
                .isEqualTo("line-90-bass-%s.flac".formatted(bass.sha256().hex().substring(0, 12)));
        assertThat(ExactStems.of(name)).contains(new ExactStems(0, 90));
        assertThat(ExactStems.of(ExactStems.manifest("exercise-2", 100))).contains(new ExactStems(2, 100));
        for (String other :
                List.of("line-90-bass.flac", "line-9-exact.json", "exercise-0-90-exact.json", "full-90.flac")) {
            assertThat(ExactStems.of(other)).as(other).isEmpty();
        }
    }

    @Test
    void aManifestOfAnEarlierProgramHasNoSectionsAndNoNeck() {
        byte[] earlier = "{\"form\":1,\"line\":\"line\",\"stems\":[]}".getBytes(StandardCharsets.UTF_8);
        assertThat(PlayJson.read(earlier).sections()).isEmpty();
        assertThat(PlayJson.read(earlier).strings()).isEmpty();
        assertThat(PlayJson.read(earlier).places()).isEmpty();
    }

    /** At the levels of the page. */
    private BandTrack page(Mix mix) {
        return new BandTrack(tape.performance(), tape, mix, tape.loose());
    }

    private static void add(float[] laid, float[] samples, long at) {
        for (int i = 0; i < samples.length; i++) {
            laid[(int) at + i] += samples[i];
        }
    }

    /** What both ears hear: without the places of a kit's pieces. */
    private static float[] middle(Sound sound, int frames) {
        var all = new float[2][(int) sound.frames()];
        sound.read(all);
        var middle = new float[frames];
        for (int i = 0; i < frames; i++) {
            middle[i] = (all[0][i] + all[1][i]) / 2;
        }
        return middle;
    }

    private static float[] left(Sound sound, int frames) {
        var all = new float[2][(int) sound.frames()];
        sound.read(all);
        return Arrays.copyOf(all[0], frames);
    }

    private static float farthest(float[] samples, float[] others) {
        float farthest = 0;
        for (int i = 0; i < samples.length; i++) {
            farthest = Math.max(farthest, Math.abs(samples[i] - others[i]));
        }
        return farthest;
    }

    private static int firstHeard(float[] samples) {
        int first = 0;
        while (Math.abs(samples[first]) < 1e-3f) {
            first++;
        }
        return first;
    }

    /** The cosine of the angle between two sounds: 1 where they differ in loudness alone. */
    private static double alike(float[] samples, float[] others, int from, int to) {
        return alike(samples, others, from, to, 0);
    }

    private static double alike(float[] samples, float[] others, int from, int to, int lag) {
        double both = 0;
        double one = 0;
        double other = 0;
        for (int i = from; i < to; i++) {
            both += samples[i] * others[i + lag];
            one += samples[i] * samples[i];
            other += others[i + lag] * others[i + lag];
        }
        return both / Math.sqrt(one * other);
    }

    /** The first beat of a bar, if anything sounds in it: at no other frame it would be more alike, whatever the room adds. */
    private void assertStandsThere(float[] heard, float[] laid, int from, String what) {
        int to = from + 44_100 * 60 / 126;
        if (to > heard.length || peak(laid, from, to) < 1e-3f) {
            return;
        }
        assertThat(alike(heard, laid, from, to)).as(what).isGreaterThan(0.9);
        float[] heardSteps = steps(heard);
        float[] laidSteps = steps(laid);
        double there = alike(heardSteps, laidSteps, from, to);
        for (int lag : new int[] {-2, -1, 1, 2}) {
            assertThat(alike(heardSteps, laidSteps, from, to, lag))
                    .as("%s, %d frames off", what, lag)
                    .isLessThan(there);
        }
    }

    /** From each sample to the next, and once more: what is high, and changes from frame to frame, counts most. */
    private static float[] steps(float[] samples) {
        var steps = new float[samples.length];
        for (int i = 2; i < samples.length; i++) {
            steps[i] = samples[i] - 2 * samples[i - 1] + samples[i - 2];
        }
        return steps;
    }

    private static float peak(float[] samples, int from, int to) {
        float peak = 0;
        for (int i = from; i < to; i++) {
            peak = Math.max(peak, Math.abs(samples[i]));
        }
        return peak;
    }

    private static float[] decoded(byte[] file, Segment segment) throws IOException {
        var out = new float[(int) segment.frames()];
        if (segment.bytes() == 0) {
            return out;
        }
        int from = (int) segment.offset();
        var stream = new ByteArrayInputStream(Arrays.copyOfRange(file, from, from + (int) segment.bytes()));
        try (var decoder = new FlacDecoder(stream)) {
            int done = 0;
            for (float[][] block = decoder.next(); block.length > 0; block = decoder.next()) {
                System.arraycopy(block[0], 0, out, done, block[0].length);
                done += block[0].length;
            }
            assertThat(done).isEqualTo(out.length);
        }
        return out;
    }

    private byte[] bytes(String name) throws IOException {
        try (var in = blobs.open(written.files().get(name).sha256())) {
            return in.readAllBytes();
        }
    }
}
