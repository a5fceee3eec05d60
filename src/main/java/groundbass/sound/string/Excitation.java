package groundbass.sound.string;

import groundbass.score.Technique;

/**
 * How a stroke meets the string. Places, brightness and decay follow rule: technique-sound; the amounts were set so
 * that level, attack and spectrum stand to one another as its table says.
 *
 * @param place where it is touched
 * @param rise seconds until the string is let go
 * @param pull how far it is drawn away from the neck; less than nothing, towards it
 * @param strike how fast it is struck towards the neck
 * @param noise how much skin and nail are heard
 * @param noiseSeconds how long they are heard, to -60 dB
 * @param brightness hertz up to which the stroke is full
 * @param sustain of the string's own decay
 * @param loss how much faster high partials fall
 * @param rattle how hard the string meets the frets, 0 not at all to 1
 */
record Excitation(
        Spot place,
        double rise,
        double pull,
        double strike,
        double noise,
        double noiseSeconds,
        double brightness,
        double sustain,
        double loss,
        double rattle) {
    static final Excitation DEAD = new Excitation(hand(0.25), 0.002, 0.3, 4.5, 0.6, 0.03, 1_800, 0.02, 0.15, 0);
    static final Excitation HAMMER = new Excitation(end(0.72), 0, 0, 0.3, 0.1, 0.015, 2_500, 1, 0.05, 0);
    static final Excitation PULL = new Excitation(end(0.72), 0, 0.5, 0, 0.06, 0.01, 2_500, 1, 0.05, 0);
    static final Excitation SLIDE = new Excitation(end(0.72), 0, 0, 0, 0.08, 0.09, 2_000, 1, 0.05, 0);

    /**
     * A place on the string, as a fraction from the bridge: of the open string where a hand keeps its place whatever is
     * fretted, of what sounds where it goes with the fret.
     */
    record Spot(double fraction, boolean fixed) {
        /** So near to the fret nothing can be plucked. */
        private static final double FARTHEST = 0.95;

        /** As a fraction of what sounds, where that is {@code ratio} of the open string. */
        double of(double ratio) {
            return fixed ? Math.min(FARTHEST, fraction / ratio) : fraction;
        }
    }

    private static Spot hand(double fraction) {
        return new Spot(fraction, true);
    }

    private static Spot end(double fraction) {
        return new Spot(fraction, false);
    }

    static Excitation of(Technique hand) {
        return switch (hand) {
            case FINGER, INDEX, MIDDLE, PLUCK -> new Excitation(hand(0.2), 0.006, 1, 0, 0.03, 0.02, 2_000, 1, 0.05, 0);
            case THUMB -> new Excitation(hand(0.25), 0.008, 1, 0, 0.02, 0.02, 1_300, 1, 0.06, 0);
            case SLAP, THUMB_DOWN -> new Excitation(hand(0.31), 0.0007, 0, 2.2, 0.1, 0.015, 4_500, 0.8, 0.04, 0.85);
            case THUMB_UP -> new Excitation(hand(0.29), 0.001, 1.7, 0, 0.1, 0.015, 5_000, 0.8, 0.04, 0.85);
            case POP -> new Excitation(hand(0.18), 0.0005, 2.1, 0, 0.15, 0.012, 9_000, 0.8, 0.03, 0.93);
            case PICK -> new Excitation(hand(0.13), 0.002, 1.1, 0.1, 0.2, 0.012, 5_000, 1, 0.04, 0);
            case TAP -> new Excitation(end(0.72), 0.001, 0.2, 0.8, 0.2, 0.015, 3_500, 0.9, 0.05, 0);
            case MUTE -> new Excitation(hand(0.09), 0.006, 1.8, 0, 0.05, 0.02, 800, 0.15, 0.12, 0);
            case RAKE -> new Excitation(hand(0.2), 0.004, 0.8, 0, 0.1, 0.02, 1_800, 0.5, 0.06, 0);
            case LEFT_HAND -> new Excitation(end(0.7), 0.001, 0.2, 0.9, 0.4, 0.03, 1_800, 0.4, 0.1, 0);
        };
    }
}
