package groundbass.groove;

import java.util.SplittableRandom;

/**
 * How a drummer plays one stroke: a little late, a little harder or softer than it is written. It hangs on where the stroke
 * stands in its pattern, so that equal bars stay equal, and the same line sounds the same. How much is by trial, no source.
 *
 * @param late seconds after its moment
 * @param force by what its loudness is multiplied
 */
record DrummersTouch(double late, double force) {
    static final DrummersTouch NONE = new DrummersTouch(0, 1);

    /** The hand that strikes every second column is the weaker one. */
    private static final double WEAKER = 0.92;

    private static final double FORCE = 0.07;

    /**
     * @param bar in the pattern, from zero
     * @param column in the bar, from zero
     */
    static DrummersTouch of(Piece piece, int bar, int column, Groove groove) {
        if (groove.feel() == Groove.MACHINE) {
            return NONE;
        }
        var random = new SplittableRandom((piece.ordinal() * 31L + bar) * 101 + column);
        double much = groove.feel() / 100.0;
        double late = laziness(piece, groove) + 0.003 * random.nextDouble();
        double hand = isHandToHand(piece) && column % 2 == 1 ? WEAKER : 1;
        double force = hand * (1 + FORCE * (2 * random.nextDouble() - 1));
        return new DrummersTouch(much * late, 1 + much * (force - 1));
    }

    /** Backbeats lie back; nothing comes before its moment. */
    private static double laziness(Piece piece, Groove groove) {
        return switch (piece) {
            case SNARE, RIM, CLAP -> groove.style().back() / 1000.0;
            case HIGHTOM, MIDTOM, LOWTOM, COWBELL -> 0.002;
            case KICK, HAT, PEDAL, OPEN, RIDE, BELL, CRASH, SHAKER, TAMBOURINE -> 0;
        };
    }

    private static boolean isHandToHand(Piece piece) {
        return piece == Piece.HAT || piece == Piece.RIDE || piece == Piece.SHAKER;
    }
}
