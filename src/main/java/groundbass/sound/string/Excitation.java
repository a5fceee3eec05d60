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
 * @param knock how hard a string is hit that cannot give way
 * @param noise how much skin and nail are heard
 * @param noiseSeconds how long they are heard, to -60 dB
 * @param brightness hertz up to which the stroke is full
 * @param sustain of the string's own decay
 * @param loss how much faster high partials fall
 * @param frets what the string meets
 */
record Excitation(
        Spot place,
        double rise,
        double pull,
        double strike,
        double knock,
        double noise,
        double noiseSeconds,
        double brightness,
        double sustain,
        double loss,
        FretContact frets) {
    static final Excitation HAMMER =
            new Excitation(end(0.72), 0, -1.22, 0.3, 0, 0.1, 0.015, 1_900, 1, 0.05, FretContact.NONE);
    static final Excitation PULL =
            new Excitation(end(0.72), 0, 1.3, 0, 0, 0.06, 0.01, 2_500, 1, 0.05, FretContact.NONE);
    static final Excitation SLIDE = new Excitation(end(0.72), 0, 0, 0, 0, 0.08, 0.09, 2_000, 1, 0.05, FretContact.NONE);

    /** How long a hand rustles on a string that it holds still, to -60 dB. */
    private static final double DEAD_NOISE_SECONDS = 0.1;

    private static final double NEAREST_TO_A_FRET = 0.5; // these by trial, no source
    private static final double NEAREST_SLAP = 0.58;
    private static final double NEAREST_SNAP = 0.37;

    /**
     * A place on the string, as a fraction from the bridge: of the open string where a hand keeps its place whatever is
     * fretted, of what sounds where it goes with the fret.
     *
     * @param farthest so near to the fret it is not touched, as a fraction of what sounds
     */
    record Spot(double fraction, boolean fixed, double farthest) {
        Spot times(double factor) {
            return new Spot(fraction * factor, fixed, farthest);
        }

        /** As a fraction of what sounds, where that is {@code ratio} of the open string. */
        double of(double ratio) {
            return fixed ? Math.min(farthest, fraction / ratio) : fraction;
        }
    }

    /** A hand moves along before the frets are under it. */
    private static Spot hand(double fraction) {
        return new Spot(fraction, true, NEAREST_TO_A_FRET);
    }

    /** A thumb that slaps moves along before its blow comes too near to the frets that the string is to meet. */
    private static Spot thumb(double fraction) {
        return new Spot(fraction, true, NEAREST_SLAP);
    }

    /** What lets the string snap keeps on this side of the frets that it falls onto. */
    private static Spot snap(double fraction) {
        return new Spot(fraction, true, NEAREST_SNAP);
    }

    private static Spot end(double fraction) {
        return new Spot(fraction, false, NEAREST_TO_A_FRET);
    }

    static Excitation of(Technique hand) {
        return switch (hand) {
            case FINGER, INDEX, MIDDLE, PLUCK ->
                new Excitation(hand(0.2), 0.006, 1, 0, 0, 0.03, 0.02, 2_000, 1, 0.05, FretContact.UNDER_A_HARD_FINGER);
            case THUMB -> plain(hand(0.25), 0.008, 1, 0, 0.02, 0.02, 1_300, 1, 0.06);
            case SLAP, THUMB_DOWN ->
                new Excitation(thumb(0.31), 0.0007, 0, 2.06, 0, 0.1, 0.015, 5_000, 0.8, 0.04, FretContact.UNDER_A_BLOW);
            case THUMB_UP ->
                new Excitation(snap(0.29), 0.001, 1.5, 0, 0, 0.1, 0.015, 5_000, 0.8, 0.04, FretContact.UNDER_A_SNAP);
            case POP ->
                new Excitation(snap(0.18), 0.0005, 1.74, 0, 0, 0.15, 0.012, 9_000, 0.8, 0.03, FretContact.UNDER_A_SNAP);
            case PICK -> plain(hand(0.13), 0.002, 1.1, 0.1, 0.2, 0.012, 5_000, 1, 0.04);
            case TAP -> plain(end(0.72), 0.001, 0.2, 0.8, 0.2, 0.015, 3_500, 0.9, 0.05);
            case MUTE -> plain(hand(0.09), 0.006, 1.8, 0, 0.05, 0.02, 800, 0.15, 0.12);
            case RAKE -> plain(hand(0.2), 0.004, 0.8, 0, 0.1, 0.02, 1_800, 0.5, 0.06);
            case LEFT_HAND -> plain(end(0.7), 0.001, 0.2, 0.9, 0.4, 0.03, 1_800, 0.4, 0.1);
        };
    }

    /** Of a note whose string is held dead: the same hand, on a string that does not swing (rule: dead-note-sound). */
    static Excitation dead(Technique hand) {
        return switch (hand) {
            case FINGER, INDEX, MIDDLE, PLUCK -> dead(hand(0.2), 640, 5, 2_300);
            case RAKE -> dead(hand(0.2), 420, 4, 2_700);
            case THUMB -> dead(hand(0.25), 700, 5, 1_800);
            case MUTE -> dead(hand(0.09), 460, 4, 1_700);
            case SLAP, THUMB_DOWN -> dead(hand(0.31), 1_150, 9, 2_800);
            case THUMB_UP -> dead(hand(0.29), 1_000, 9, 3_200);
            case POP -> dead(hand(0.18), 940, 9, 4_000);
            case PICK -> dead(hand(0.13), 470, 4, 3_400);
            case TAP -> dead(end(0.72), 900, 9, 2_700);
            case LEFT_HAND -> dead(end(0.7), 870, 9, 2_000);
        };
    }

    /** Without a fret that it meets. */
    private static Excitation plain(
            Spot place,
            double rise,
            double pull,
            double strike,
            double noise,
            double noiseSeconds,
            double brightness,
            double sustain,
            double loss) {
        return new Excitation(
                place, rise, pull, strike, 0, noise, noiseSeconds, brightness, sustain, loss, FretContact.NONE);
    }

    private static Excitation dead(Spot place, double knock, double noise, double brightness) {
        return new Excitation(
                place, 0, 0, 0, knock, noise, DEAD_NOISE_SECONDS, brightness, 0.02, 0.15, FretContact.NONE);
    }
}
