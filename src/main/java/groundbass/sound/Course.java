package groundbass.sound;

/**
 * What one string is: how low it is when open, how long it rings and how stiff it is there, and how both change with the
 * length that sounds.
 *
 * @param openMidi the open string's MIDI number
 */
record Course(int openMidi) {
    private static final int LOW_B = 23;

    /** Kemp 2020 gives +100 cents at partial 10 of a low B stopped at fret 12, so 3.1e-4 when open (REFERENCE 7.2). */
    private static final double LOW_B_STIFFNESS = 3.1e-4;

    /** Semitones over which the stiffness of open strings halves: E 2e-4, A 1.2e-4, D 8e-5, G 5e-5 (REFERENCE 7.2). */
    private static final double HALVING = 7.6;

    private static final double SHORTEST = 3;

    /** REFERENCE 7.2: open B0 14 s, E1 12, A1 10, D2 8, G2 6; by 2^(-n/12) at fret n (common practice, no source). */
    double t60(double pitch) {
        double open = Math.max(SHORTEST, 14 - 0.4 * (openMidi - LOW_B));
        return open * StrictMath.pow(2, (openMidi - pitch) / 12);
    }

    /** B of the string where it sounds {@code pitch}: four times as much at half the length (REFERENCE 7.2, physics). */
    double stiffness(double pitch) {
        double open = LOW_B_STIFFNESS * StrictMath.pow(2, (LOW_B - openMidi) / HALVING);
        return open * StrictMath.pow(2, (pitch - openMidi) / 6);
    }
}
