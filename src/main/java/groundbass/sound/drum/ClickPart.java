package groundbass.sound.drum;

import groundbass.groove.Click;
import groundbass.groove.Click.Weight;
import groundbass.signal.SampleRate;
import groundbass.sound.unit.OneShotSampler;
import groundbass.sound.unit.OneShotSampler.Shot;
import groundbass.sound.unit.Unit;
import java.util.List;

/**
 * The metronome: short tones, the first beat higher and louder. They keep their level until they end, so that they are
 * heard without a peak that stands out of the music.
 */
public final class ClickPart {
    private static final double FIRST_HERTZ = 1_760;
    private static final double OTHER_HERTZ = 1_320;
    private static final double SECONDS = 0.036;
    private static final double RISE_SECONDS = 0.002;
    private static final double FALL_SECONDS = 0.014;

    /** How much of the octave sounds along. */
    private static final double OCTAVE = 0.35;

    private ClickPart() {}

    public static Unit of(SampleRate rate, List<Click> clicks) {
        float[] first = burst(rate, FIRST_HERTZ);
        float[] other = burst(rate, OTHER_HERTZ);
        return new OneShotSampler(
                rate,
                clicks.stream()
                        .map(click ->
                                Shot.of(rate.at(click.seconds()), click.first() ? first : other, level(click.weight())))
                        .toList());
    }

    /** The first beat is about 5 dB above the others (rule: click-accent). */
    private static double level(Weight weight) {
        return switch (weight) {
            case BAR -> 0.5;
            case BEAT -> 0.28;
            case COUNT -> 0.16;
        };
    }

    private static float[] burst(SampleRate rate, double hertz) {
        var samples = new float[(int) rate.at(SECONDS)];
        for (int i = 0; i < samples.length; i++) {
            double phase = rate.radians(hertz) * i;
            double wave = StrictMath.sin(phase) + OCTAVE * StrictMath.sin(2 * phase);
            double level = slope(i / (RISE_SECONDS * rate.hertz()))
                    * slope((samples.length - i) / (FALL_SECONDS * rate.hertz()));
            samples[i] = (float) (level * wave);
        }
        return samples;
    }

    /** From 0 to 1 along half a cosine, and 1 from there on. */
    private static double slope(double share) {
        return share >= 1 ? 1 : 0.5 - 0.5 * StrictMath.cos(Math.PI * share);
    }
}
