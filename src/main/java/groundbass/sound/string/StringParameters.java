package groundbass.sound.string;

/**
 * What one string is: how low it is when open, how long it rings and how stiff it is there, and how both change with the
 * length that sounds.
 *
 * @param openMidi the open string's MIDI number
 */
record StringParameters(int openMidi) {
    private static final int LOW_B = 23;

    /** Of the open low B (rule: string-stiffness). */
    private static final double LOW_B_STIFFNESS = 3.1e-4;

    /** Semitones over which the stiffness of open strings halves (rule: string-stiffness). */
    private static final double HALVING = 7.6;

    private static final double SHORTEST = 3;

    /** Seconds to -60 dB (rule: decay-of-strings). */
    double t60(double pitch) {
        double open = Math.max(SHORTEST, 14 - 0.4 * (openMidi - LOW_B));
        return open * StrictMath.pow(2, (openMidi - pitch) / 12);
    }

    /**
     * B of the string where it sounds {@code pitch}: four times as much at half the length (rule: string-stiffness).
     */
    double stiffness(double pitch) {
        double open = LOW_B_STIFFNESS * StrictMath.pow(2, (LOW_B - openMidi) / HALVING);
        return open * StrictMath.pow(2, (pitch - openMidi) / 6);
    }
}
