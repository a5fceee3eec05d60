package groundbass.sound.string;

import java.util.SplittableRandom;

/**
 * How one stroke differs from another that is written alike, since no hand plays twice the same. The same seed gives the
 * same variation. How much is by trial, no source.
 *
 * @param level by what its amount is multiplied
 * @param place by what its place on the string is
 * @param brightness by what the frequency is up to which it is full
 */
record StrokeVariation(double level, double place, double brightness) {
    private static final double LEVEL = 0.08;
    private static final double PLACE = 0.1;
    private static final double BRIGHTNESS = 0.1;

    static StrokeVariation of(int seed) {
        var random = new SplittableRandom(seed);
        return new StrokeVariation(about(LEVEL, random), about(PLACE, random), about(BRIGHTNESS, random));
    }

    private static double about(double most, SplittableRandom random) {
        return 1 + most * (2 * random.nextDouble() - 1);
    }
}
