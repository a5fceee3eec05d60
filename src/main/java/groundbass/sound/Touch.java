package groundbass.sound;

import groundbass.score.Technique;

/**
 * How a stroke meets the string. Places, brightness and decay follow REFERENCE 7.2; the amounts were set so that level,
 * attack and spectrum stand to one another as that table says (common practice, no source).
 *
 * @param place where it is touched, as a fraction of the string from the bridge
 * @param pull how far it is drawn aside
 * @param strike how fast it is struck
 * @param noise how much skin, nail and fret are heard
 * @param noiseSeconds how long they are heard, to -60 dB
 * @param brightness hertz up to which the stroke is full
 * @param sustain of the string's own decay
 * @param loss how much faster high partials fall
 */
record Touch(
        double place,
        double pull,
        double strike,
        double noise,
        double noiseSeconds,
        double brightness,
        double sustain,
        double loss) {
    static final Touch DEAD = new Touch(0.25, 0.5, 0.8, 1.2, 0.04, 1_800, 0.015, 0.2);
    static final Touch HAMMER = new Touch(0.5, 0, 0.5, 0.05, 0.01, 2_500, 1, 0.05);
    static final Touch PULL = new Touch(0.4, 0.45, 0, 0.05, 0.01, 2_500, 1, 0.05);
    static final Touch SLIDE = new Touch(0.4, 0, 0, 0.03, 0.06, 2_000, 1, 0.05);

    static Touch of(Technique hand) {
        return switch (hand) {
            case FINGER, INDEX, MIDDLE, PLUCK -> new Touch(0.2, 1, 0, 0.04, 0.02, 2_000, 1, 0.05);
            case THUMB -> new Touch(0.25, 1, 0, 0.02, 0.02, 1_500, 1, 0.06);
            case SLAP, THUMB_DOWN -> new Touch(0.31, 0.4, 0.8, 0.8, 0.04, 5_500, 0.8, 0.03);
            case THUMB_UP -> new Touch(0.29, 0.7, 0.6, 0.4, 0.04, 6_000, 0.8, 0.03);
            case POP -> new Touch(0.18, 1.2, 0.3, 1.3, 0.05, 9_000, 0.8, 0.02);
            case PICK -> new Touch(0.13, 1.1, 0.1, 0.2, 0.02, 5_000, 1, 0.04);
            case TAP -> new Touch(0.5, 0.4, 0.7, 0.1, 0.02, 3_500, 0.9, 0.05);
            case MUTE -> new Touch(0.09, 1.3, 0, 0.05, 0.02, 800, 0.12, 0.12);
            case RAKE -> new Touch(0.2, 0.8, 0, 0.1, 0.02, 1_800, 0.5, 0.06);
            case LEFT_HAND -> new Touch(0.6, 0.2, 0.6, 0.4, 0.03, 1_800, 0.4, 0.1);
        };
    }
}
