package groundbass.sound.drum;

import groundbass.groove.Click;
import groundbass.groove.Click.Weight;
import groundbass.signal.SampleRate;
import groundbass.sound.unit.OneShotSampler;
import groundbass.sound.unit.OneShotSampler.Shot;
import groundbass.sound.unit.Unit;
import java.util.List;

/** The metronome: short bursts, the first beat higher and louder. */
public final class ClickPart {
    private static final double FIRST_HERTZ = 1_760;
    private static final double OTHER_HERTZ = 1_320;
    private static final double SECONDS = 0.04;

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
        new Membrane(rate, hertz, hertz, 1, SECONDS, 1).render(samples, 0, samples.length);
        return samples;
    }
}
