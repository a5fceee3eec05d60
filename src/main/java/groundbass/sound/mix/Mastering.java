package groundbass.sound.mix;

import groundbass.listening.LoudnessMeter;
import groundbass.performance.Performance;
import groundbass.signal.SampleRate;
import groundbass.signal.Sound;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.EnumSet;

/**
 * How loud everything that a line sounds like is made. Stems stand to one another as {@link #balance} measures them; then
 * each mix for itself reaches -16 LUFS under a true peak of -1 dBTP (rule: lesson-loudness, peak-limit), whatever
 * instruments it has and how fast it is.
 */
public final class Mastering {
    public static final double TARGET_LUFS = -16;
    public static final double CEILING_DBTP = -1;

    /** Lower than the ceiling, so that what a lossy encoder adds stays under it (by trial, no source). */
    private static final double LIMIT_DBTP = -4.4;

    /** LU of the music's loudest moment over the count-in's. rule: mix-balance. */
    private static final double OVER_COUNT_IN = 4;

    /** LU that {@link #loose} stems lie under the target, so that nothing passes the ceiling where they meet. */
    public static final double HEADROOM = 4;

    /** LU by which a stem may be moved: what is hardly there is not blown up. */
    private static final double FARTHEST = 15;

    /** So near to the target, the rest can be added without listening again. */
    private static final double NEAR = 0.3;

    private static final int TRIES = 4;
    private static final double LEAST_GIVEN = 0.4;
    private static final int RATE = SampleRate.CD.hertz();
    private static final int BLOCK = 4_096;

    private Mastering() {}

    /** LU under the bass. rule: mix-balance. */
    private static double underBass(Stem stem) {
        return switch (stem) {
            case BASS -> 0;
            case DRUMS -> 5;
            case CHORDS, CLICK -> 7;
        };
    }

    /** How the stems of a performance stand to one another; its bass stays as it is. */
    public static Balance balance(Performance performance, StemBars sounds) {
        double bass = integrated(performance, sounds, Stem.BASS);
        var gains = new EnumMap<Stem, Double>(Stem.class);
        for (var stem : Stem.values()) {
            double over = bass - underBass(stem) - integrated(performance, sounds, stem);
            gains.put(stem, Double.isFinite(over) ? factor(Math.max(-FARTHEST, Math.min(FARTHEST, over))) : 1);
        }
        return new Balance(gains, gains.get(Stem.CLICK));
    }

    private static double integrated(Performance performance, StemBars sounds, Stem stem) {
        var alone = BarsInARow.of(performance, sounds, stem);
        var meter = LoudnessMeter.withoutPeak(
                RATE, 1); // equal power: wherever it is placed, both sides together are as loud
        long end = SampleRate.CD.at(performance.seconds());
        for (long at = 0; at < end; at += BLOCK) {
            var block = new float[1][BLOCK];
            alone.render(block[0], 0, BLOCK);
            meter.add(block, BLOCK);
        }
        return meter.integrated();
    }

    /**
     * The balance at which a mix, held under the ceiling, is as loud as it shall be.
     *
     * @param balance of its stems, as {@link #balance} gives it
     */
    public static Balance mastered(Performance performance, StemBars sounds, Mix mix, Balance balance) {
        var music = heard(new BandTrack(performance, sounds, mix.withoutCountIn(), balance));
        if (Double.isInfinite(music.integrated())) {
            return balance;
        }
        var counted = balance.counted(countIn(sounds, music.momentary()));
        double gain = TARGET_LUFS - music.integrated();
        double step = 0;
        double off = FARTHEST;
        for (int i = 0; i < TRIES && Math.abs(off) > NEAR; i++) {
            var tried = track(performance, sounds, mix, counted.times(factor(gain)));
            double before = off;
            off = TARGET_LUFS - heard(tried).integrated();
            step = off / (i == 0 ? 1 : given(step, before - off));
            gain += step;
        }
        return counted.times(factor(gain));
    }

    /** LU that a decibel gives of late: the more is held down, the fewer. */
    private static double given(double step, double louder) {
        return Math.max(LEAST_GIVEN, Math.min(1, louder / step));
    }

    private static LoudnessMeter heard(Sound sound) {
        return LoudnessMeter.withoutPeak(RATE, sound.channels()).hear(sound);
    }

    private static double countIn(StemBars sounds, double loudest) {
        float[] clicks = sounds.countIn().samples();
        int length = clicks.length + RATE;
        var meter = LoudnessMeter.withoutPeak(RATE, 1);
        meter.add(new float[][] {Arrays.copyOf(clicks, length)}, length);
        double over = loudest - OVER_COUNT_IN - meter.momentary();
        return Double.isFinite(over) ? factor(over) : 1;
    }

    /** A mix under the ceiling, everything multiplied as {@code balance} says. */
    public static Sound track(Performance performance, StemBars sounds, Mix mix, Balance balance) {
        return new TruePeakLimiter(new BandTrack(performance, sounds, mix, balance), factor(LIMIT_DBTP));
    }

    /** A mix as it is to be heard. */
    public static Sound track(Performance performance, StemBars sounds, Mix mix) {
        return track(performance, sounds, mix, mastered(performance, sounds, mix, balance(performance, sounds)));
    }

    /**
     * For stems that are laid together elsewhere, where nothing looks ahead to hold them down: the whole band lies
     * {@link #HEADROOM} under the target, and nowhere passes the ceiling.
     *
     * @param balance of its stems, as {@link #balance} gives it
     */
    public static Balance loose(Performance performance, StemBars sounds, Balance balance) {
        var band = new Mix(EnumSet.of(Stem.BASS, Stem.DRUMS, Stem.CHORDS), false);
        var music = LoudnessMeter.of(new BandTrack(performance, sounds, band, balance));
        var reading = music.reading();
        if (reading.isSilent()) {
            return balance;
        }
        double gain = Math.min(TARGET_LUFS - HEADROOM - reading.integrated(), CEILING_DBTP - reading.truePeak());
        return balance.counted(countIn(sounds, music.momentary())).times(factor(gain));
    }

    private static double factor(double decibels) {
        return StrictMath.pow(10, decibels / 20);
    }
}
