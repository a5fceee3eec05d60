package groundbass.sound.mix;

import static groundbass.performance.Lines.even;
import static groundbass.performance.Lines.f;
import static groundbass.performance.Lines.line;
import static groundbass.performance.Lines.note;
import static groundbass.performance.Lines.quarters;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import groundbass.audio.Mp3;
import groundbass.audio.Wav;
import groundbass.groove.Band;
import groundbass.groove.Piece;
import groundbass.groove.Stroke;
import groundbass.performance.Performance;
import groundbass.performance.Playing;
import groundbass.score.Bar;
import groundbass.score.ChordAt;
import groundbass.score.Line;
import groundbass.score.RandomLines;
import groundbass.signal.SampleRate;
import groundbass.signal.Sound;
import groundbass.sound.Measure;
import groundbass.sound.drum.DrumKit;
import groundbass.theory.ChordSymbol;
import java.io.ByteArrayInputStream;
import java.util.List;
import java.util.Set;
import javax.sound.sampled.AudioSystem;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class BandTrackTest {
    private static final int RATE = 44_100;
    private static final Line LINE = line(quarters(120), withChord(even(8)), even(8));

    private static Bar withChord(Bar bar) {
        return bar.withChords(
                List.of(new ChordAt(f(0, 1), ChordSymbol.parse("Am7").orElseThrow())));
    }

    private static Sound track(Line line, Mix mix) {
        return track(Performance.of(line), mix);
    }

    private static Sound track(Performance performance, Mix mix) {
        return Mastering.track(performance, sounds(performance), mix);
    }

    private static Sound unmastered(Performance performance, Mix mix) {
        return new BandTrack(performance, sounds(performance), mix, Balance.EVEN);
    }

    private static StemBars sounds(Performance performance) {
        return new KeptBars(BarSounds.of(performance, Band.of(performance)));
    }

    private static float[][] samples(Sound sound, int block) {
        var all = new float[2][(int) sound.frames()];
        var part = new float[2][block];
        int at = 0;
        for (int count = sound.read(part); count > 0; count = sound.read(part)) {
            System.arraycopy(part[0], 0, all[0], at, count);
            System.arraycopy(part[1], 0, all[1], at, count);
            at += count;
        }
        assertThat(at).isEqualTo(all[0].length);
        return all;
    }

    @Test
    void nothingPlayedIsSilence() {
        assertThat(Measure.peak(samples(track(LINE, Mix.SILENT), 1_000)[0])).isZero();
    }

    @Test
    void noPeakPassesOneDecibelBelowFullScale() {
        // rule: peak-limit: -1 dBFS is 10^(-1/20) = 0.8913
        for (long seed = 0; seed < 12; seed++) {
            var all = new Mix(Set.of(Stem.values()), true);
            var out = samples(track(RandomLines.line(seed, 3), all), 4_096);
            assertThat(Measure.peak(out[0])).as("seed %d", seed).isBetween(0.1f, 0.8913f);
            assertThat(Measure.peak(out[1])).as("seed %d", seed).isLessThanOrEqualTo(0.8913f);
        }
    }

    @Test
    void theMeanIsNothing() {
        // below -60 dBFS
        for (var stem : Stem.values()) {
            float[] out = samples(track(LINE, Mix.of(stem)), 4_096)[0];
            assertThat(Math.abs(Measure.mean(out))).as(stem.name()).isLessThan(0.001);
        }
    }

    @Test
    void theSameLineGivesTheSameSamplesInBlocksOfAnySize() {
        float[][] once = samples(track(LINE, Mix.FULL), 4_096);
        assertThat(samples(track(LINE, Mix.FULL), 4_096)).isDeepEqualTo(once);
        assertThat(samples(track(LINE, Mix.FULL), 333)).isDeepEqualTo(once);
    }

    @Test
    void aSlowTempoIsPlayedSlowly() {
        // three bars of 4/4 at 120 with the count-in are 6 s, at half tempo 12 s; the tail is the same
        long full = unmastered(Performance.of(LINE, Playing.ONCE), Mix.FULL).frames();
        long half = unmastered(Performance.of(LINE, Playing.at(50)), Mix.FULL).frames();
        long twice = unmastered(Performance.of(LINE, Playing.ONCE.times(2)), Mix.FULL)
                .frames();
        assertThat(half - full).isEqualTo(6L * RATE);
        assertThat(twice - full).isEqualTo(4L * RATE);
    }

    @Test
    void theCountInIsHeardWithoutTheClick() {
        float[] counted = samples(track(LINE, Mix.of(Stem.BASS)), 4_096)[0];
        assertThat(Measure.decibels(counted, 0, 1_000)).isGreaterThan(-30);
        float[] bare = samples(track(LINE, new Mix(Set.of(Stem.BASS), false)), 4_096)[0];
        assertThat(Measure.decibels(bare, 0, 2 * RATE - 10)).isLessThan(-150);
    }

    @Test
    void theTailFadesToNothing() {
        float[] out = samples(track(LINE, Mix.FULL), 4_096)[0];
        assertThat(Measure.decibels(out, out.length - 100, 100)).isLessThan(-80);
    }

    /** rule: room-figures. */
    @Test
    void theBandStandsInARoom() {
        float[][] out = samples(track(LINE, Mix.FULL), 4_096);
        int from = 2 * RATE;
        int count = 4 * RATE;
        double sides = Measure.decibels(both(out, -1), from, count) - Measure.decibels(both(out, 1), from, count);
        assertThat(sides).isBetween(-18.0, -10.0);
    }

    private static float[] both(float[][] out, int sign) {
        var sum = new float[out[0].length];
        for (int i = 0; i < sum.length; i++) {
            sum[i] = (out[0][i] + sign * out[1][i]) / 2;
        }
        return sum;
    }

    /** rule: room-figures. Of a click the tail's power falls by 30 dB in half of the time. */
    @Test
    void theRoomIsShort() {
        var in = new float[RATE];
        in[0] = 1;
        var left = new float[RATE];
        var right = new float[RATE];
        new Room(SampleRate.CD).add(in, left, right, RATE);
        int window = RATE / 50;
        double fall = Measure.decibels(left, RATE / 20, window) - Measure.decibels(left, RATE / 5, window);
        assertThat(0.15 * 60 / fall).isBetween(0.25, 0.6);
        double apart = 0;
        for (int i = 0; i < RATE; i++) {
            apart += left[i] * right[i];
        }
        double power = Math.pow(10, Measure.decibels(left, 0, RATE) / 10) * RATE;
        assertThat(Math.abs(apart) / power).isLessThan(0.3);
    }

    @Test
    void chordsSoundTheirRoot() {
        // Am7 between D3 and E5 has an A: A3 is 220 Hz (ISO 16)
        float[] out = samples(track(LINE, new Mix(Set.of(Stem.CHORDS), false)), 4_096)[0];
        double hertz = Measure.hertz(out, 2 * RATE + 2_000, 220);
        assertThat(Measure.cents(hertz, 220)).isCloseTo(0, within(1.0));
    }

    @ParameterizedTest
    @EnumSource(Piece.class)
    void everyPieceSoundsAndIsLouderAccented(Piece piece) {
        var kit = new DrumKit(SampleRate.CD);
        float ghost = Measure.peak(kit.sample(piece, Stroke.GHOST));
        float normal = Measure.peak(kit.sample(piece, Stroke.NORMAL));
        float accent = Measure.peak(kit.sample(piece, Stroke.ACCENT));
        assertThat(ghost).isGreaterThan(0.005f).isLessThan(normal);
        assertThat(accent).isGreaterThan(normal).isLessThan(2.6f);
    }

    @Test
    void aWavFileIsReadByTheJdk() throws Exception {
        byte[] file = Wav.bytes(track(LINE, Mix.FULL));
        try (var in = AudioSystem.getAudioInputStream(new ByteArrayInputStream(file))) {
            assertThat(in.getFormat().getSampleRate()).isEqualTo(44_100f);
            assertThat(in.getFormat().getChannels()).isEqualTo(2);
            assertThat(in.getFormat().getSampleSizeInBits()).isEqualTo(16);
            assertThat(in.getFrameLength()).isEqualTo(track(LINE, Mix.FULL).frames());
            assertThat(in.readAllBytes()).hasSize(file.length - 44);
        }
    }

    @Test
    void anMp3FileIsAsLongAsItsSound() {
        byte[] file = Mp3.bytes(track(LINE, Mix.FULL));
        // MPEG-1 layer III (ISO 11172-3): eleven set bits, version 3, layer 1; a frame holds 1152 samples
        assertThat(file[0]).isEqualTo((byte) 0xFF);
        assertThat(file[1] & 0xFE).isEqualTo(0xFA);
        double seconds = file.length * 8.0 / (Mp3.KILOBITS_A_SECOND * 1_000);
        assertThat(seconds).isCloseTo(track(LINE, Mix.FULL).frames() / (double) RATE, within(0.15));
        assertThat(Mp3.bytes(track(LINE, Mix.FULL))).isEqualTo(file);
    }

    @Test
    void noStepIsSteeperWhereTheLineBeginsAgain() {
        // the loop point: two rounds, the last note held to the end of the first
        var held = line(quarters(120), even(4).withNotes(List.of(note(f(0, 1), f(1, 1), 5))));
        var performance = Performance.of(held, Playing.ONCE.times(2));
        var bass = new Mix(Set.of(Stem.BASS), false);
        float[] out = samples(unmastered(performance, bass), 4_096)[0];
        int again = 4 * RATE;
        double own = Measure.steepest(out, 2 * RATE, again - RATE / 2);
        assertThat(Measure.steepest(out, again - RATE / 2, again + 64)).isLessThanOrEqualTo(own);
    }
}
