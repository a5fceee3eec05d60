package groundbass.sound.mix;

import static groundbass.OutsideTools.said;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import groundbass.audio.Mp3;
import groundbass.audio.Wav;
import groundbass.groove.Band;
import groundbass.groove.Groove;
import groundbass.groove.GrooveLibrary;
import groundbass.groove.GrooveText;
import groundbass.linetext.LineText;
import groundbass.listening.Loudness;
import groundbass.listening.LoudnessMeter;
import groundbass.performance.Performance;
import groundbass.performance.Playing;
import groundbass.score.Extract;
import groundbass.score.Line;
import groundbass.signal.Sound;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** How loud things are that are heard together. Read by two meters of ITU-R BS.1770: ours and that of ffmpeg. */
class MasteringTest {
    private static final int RATE = 44_100;
    private static final Pattern INTEGRATED = Pattern.compile("I:\\s+(-?[0-9.]+) LUFS");
    private static final Pattern PEAK = Pattern.compile("Peak:\\s+(-?[0-9.]+) dBFS");
    private static final Map<String, Mix> OFFERED =
            Map.of("full", Mix.FULL, "without bass", Mix.WITHOUT_BASS, "bass and click", Mix.BASS_AND_CLICK);

    /** A performance with the sounds of its bars, each rendered once. */
    private record Played(Performance performance, StemBars sounds, Balance balance) {
        static Played of(Line line, Groove groove, int percent) {
            var performance = Performance.of(line, Playing.at(percent));
            var sounds = new KeptBars(BarSounds.of(performance, Band.of(performance, groove)));
            return new Played(performance, sounds, Mastering.balance(performance, sounds));
        }

        Balance mastered(Mix mix) {
            return Mastering.mastered(performance, sounds, mix, balance);
        }

        Sound track(Mix mix) {
            return Mastering.track(performance, sounds, mix, mastered(mix));
        }

        BandTrack plain(Mix mix, Balance balance) {
            return new BandTrack(performance, sounds, mix, balance);
        }
    }

    /** Its first bars. */
    private static Played demo(String lesson, int percent) throws IOException {
        var folder = Path.of("seed-data", "harbour-rounds", lesson);
        var whole = LineText.read(Files.readString(folder.resolve("line.txt"))).line();
        var line = Extract.bars(whole, 1, 3).orElseThrow();
        return Played.of(line, GrooveLibrary.suited(line), percent);
    }

    /** Slapped and half-time, fast and slow; rule: lesson-loudness, peak-limit. */
    @ParameterizedTest
    @CsvSource({"01-rope-and-pulley, 130", "04-below-the-waterline, 50"})
    void everyOfferedMixIsAsLoudAsItsTwinsAndHasNoHigherPeak(String lesson, int percent, @TempDir Path folder)
            throws IOException, InterruptedException {
        var played = demo(lesson, percent);
        for (var mix : OFFERED.entrySet()) {
            var ours = Loudness.of(played.track(mix.getValue()));
            assertThat(ours.integrated()).as(mix.getKey()).isEqualTo(-16, within(0.2));
            assertThat(ours.truePeak()).as(mix.getKey()).isLessThanOrEqualTo(-1);
        }
        var wav = folder.resolve("track.wav");
        Files.write(wav, Wav.bytes(played.track(Mix.WITHOUT_BASS)));
        secondMeterAgrees(wav);
        var mp3 = folder.resolve("track.mp3");
        Files.write(mp3, Mp3.bytes(played.track(Mix.WITHOUT_BASS)));
        secondMeterAgrees(mp3);
    }

    /** What an encoder adds differs from stroke to stroke: here it was 2.7 dB once. rule: peak-limit. */
    @Test
    void noStrokeOfAWholeMp3PassesTheCeiling(@TempDir Path folder) throws IOException, InterruptedException {
        var text = Files.readString(Path.of("seed-data", "harbour-rounds", "02-night-ferry", "line.txt"));
        var line = LineText.read(text).line();
        var played = Played.of(line, GrooveLibrary.suited(line), 50);
        var mp3 = folder.resolve("track.mp3");
        Files.write(mp3, Mp3.bytes(PreRoll.before(played.track(Mix.WITHOUT_BASS))));
        secondMeterAgrees(mp3);
    }

    private static void secondMeterAgrees(Path file) throws IOException, InterruptedException {
        String said = said(
                "ffmpeg",
                "-hide_banner",
                "-nostats",
                "-i",
                file.toString(),
                "-af",
                "ebur128=peak=true",
                "-f",
                "null",
                "-");
        assertThat(last(INTEGRATED, said)).as(file.toString()).isEqualTo(-16, within(0.5));
        assertThat(last(PEAK, said)).as(file.toString()).isLessThanOrEqualTo(-1);
    }

    private static double last(Pattern pattern, String text) {
        return pattern.matcher(text)
                .results()
                .reduce((before, after) -> after)
                .map(found -> Double.parseDouble(found.group(1)))
                .orElseThrow(() -> new AssertionError(text));
    }

    /** rule: mix-balance. */
    @ParameterizedTest
    @ValueSource(strings = {"01-rope-and-pulley", "06-last-lantern-home"})
    void theBandStandsUnderTheBassAndTheCountInNearTheMusic(String lesson) throws IOException {
        var played = demo(lesson, 80);
        var balance = played.balance();
        double bass = integrated(played, balance, Stem.BASS);
        assertThat(bass - integrated(played, balance, Stem.DRUMS)).isBetween(3.0, 8.0);
        assertThat(bass - integrated(played, balance, Stem.CHORDS)).isBetween(5.0, 9.0);
        assertThat(bass - integrated(played, balance, Stem.CLICK)).isBetween(6.0, 8.0);
        for (var mix : OFFERED.values()) {
            var mastered = played.mastered(mix);
            var countIn = LoudnessMeter.of(played.plain(new Mix(Set.of(), true), mastered));
            var music = LoudnessMeter.of(played.plain(mix.withoutCountIn(), mastered));
            assertThat(music.momentary() - countIn.momentary())
                    .as(mix.toString())
                    .isBetween(0.0, 6.0);
        }
    }

    private static double integrated(Played played, Balance balance, Stem stem) {
        return Loudness.of(played.plain(new Mix(Set.of(stem), false), balance)).integrated();
    }

    private static Line quarters() {
        return LineText.read("""
                tempo 96
                bar 1 over Am7
                1-4 A0, E3, A0, G2
                bar 2 = bar 1
                bar 3 = bar 1
                bar 4 = bar 1
                """).line();
    }

    private static Groove groove(String row) {
        long columns = row.lines()
                .findFirst()
                .orElseThrow()
                .chars()
                .filter(sign -> "xX-".indexOf(sign) >= 0)
                .count();
        return GrooveText.read("groove Test\nmeter 4/4\ncolumns " + columns + "\n" + row + "\n")
                .groove()
                .orElseThrow()
                .withFeel(Groove.MACHINE);
    }

    private static final Map<String, String> KIT =
            Map.of("kick", "x-x- x-x-", "snare", "--x- --x-", "hat", "xxxx xxxx");

    /** By K-weighted power of one piece as it is heard in a whole mix; rule: accent-at-the-output. */
    @ParameterizedTest
    @CsvSource({"kick", "snare", "hat"})
    void anAccentStaysFourDecibelsOverANormalStroke(String piece) {
        String accented = piece + " x--- X---";
        String others = KIT.entrySet().stream()
                .filter(row -> !row.getKey().equals(piece))
                .map(row -> "\n" + row.getKey() + " " + row.getValue())
                .collect(Collectors.joining());
        var whole = Played.of(quarters(), groove(accented + others), 100);
        var alone = Played.of(quarters(), groove(accented), 100);
        var performance = whole.performance();
        double bar = performance.seconds(performance.bars().get(2).start());
        double half = 2 * 60 / 96.0;
        for (var mix : List.of(Mix.FULL, Mix.WITHOUT_BASS)) {
            float[] heard =
                    atTheOutput(left(alone.plain(new Mix(Set.of(Stem.DRUMS), false), Balance.EVEN)), whole, mix);
            assertThat(loudness(heard, bar + half) - loudness(heard, bar))
                    .as("%s in %s", piece, mix)
                    .isGreaterThan(4);
        }
    }

    /** A part of a mix, each sample held down as much as the whole mix is there. */
    private static float[] atTheOutput(float[] part, Played whole, Mix mix) {
        var mastered = whole.mastered(mix);
        float[] loose = left(whole.plain(mix, mastered));
        float[] held = left(Mastering.track(whole.performance(), whole.sounds(), mix, mastered));
        var heard = new float[part.length];
        float gain = 1;
        for (int i = 0; i < part.length; i++) {
            gain = Math.abs(loose[i]) > 0.01 ? held[i] / loose[i] : gain;
            heard[i] = part[i] * gain;
        }
        return heard;
    }

    private static float[] left(Sound sound) {
        var all = new float[(int) sound.frames()];
        var part = new float[2][4_096];
        int at = 0;
        for (int count = sound.read(part); count > 0; count = sound.read(part)) {
            System.arraycopy(part[0], 0, all, at, count);
            at += count;
        }
        return all;
    }

    private static double loudness(float[] samples, double seconds) {
        int from = (int) Math.round(seconds * RATE);
        var meter = new LoudnessMeter(RATE, 1);
        meter.add(new float[][] {Arrays.copyOfRange(samples, from, from + RATE / 2)}, RATE / 2);
        return meter.momentary();
    }

    @Test
    void nothingToHearIsLeftAlone() {
        var silent = LineText.read("bar 1 over N.C.\n1-4 rest\n").line();
        var played = Played.of(silent, groove("snare ----"), 100);
        var mix = new Mix(Set.of(Stem.BASS, Stem.DRUMS), false);
        assertThat(played.mastered(mix)).isEqualTo(played.balance());
        assertThat(played.balance().of(Stem.DRUMS)).isEqualTo(1);
    }

    @Test
    void theStemsOfAPageLeaveRoomForOneAnother() throws IOException {
        var played = demo("04-below-the-waterline", 100);
        var loose = Mastering.loose(played.performance(), played.sounds(), played.balance());
        var band = Loudness.of(played.plain(new Mix(Mix.FULL.stems(), false), loose));
        assertThat(band.truePeak()).isLessThanOrEqualTo(Mastering.CEILING_DBTP + 0.01);
        assertThat(band.integrated())
                .isEqualTo(Mastering.TARGET_LUFS - Mastering.HEADROOM, within(1.0)); // rule: lesson-loudness
    }

    /** Before the count-in there is silence as long as the file's tag says; rule: pre-roll. */
    @Test
    void aFileBeginsQuietly() {
        var played = Played.of(quarters(), groove("hat xxxx"), 100);
        float[] samples = left(PreRoll.before(played.track(Mix.FULL)));
        int quiet = (int) (PreRoll.SECONDS * RATE);
        for (int i = 0; i < quiet; i++) {
            assertThat(samples[i]).isZero();
        }
        double loudest = 0;
        for (int i = quiet; i < quiet + RATE / 20; i++) {
            loudest = Math.max(loudest, Math.abs(samples[i]));
        }
        assertThat(loudest).isGreaterThan(0.05);
    }
}
