package groundbass.intake.draft;

import groundbass.score.Fraction;
import groundbass.score.Tempo;
import java.util.Optional;

/** The tempo that a file plays at, as a line says it: whole beats a minute. */
public final class PlayedTempo {
    private static final Fraction HALF = Fraction.of(1, 2);
    private static final Fraction QUARTER = Fraction.of(1, 4);

    private PlayedTempo() {}

    /**
     * Quarters a minute, counted in the beats of a metre where they come out whole, else in quarters; empty where no line
     * has such a tempo.
     */
    public static Optional<Tempo> of(Fraction quarters, Fraction pulse) {
        var beats = quarters.times(QUARTER).dividedBy(pulse);
        boolean whole = beats.denominator() == 1;
        return whole && counted(beats, pulse).isPresent() ? counted(beats, pulse) : counted(quarters, QUARTER);
    }

    /** So many beats of one length, rounded. */
    public static Optional<Tempo> counted(Fraction perMinute, Fraction beat) {
        long whole = perMinute.plus(HALF).floor();
        boolean fits = whole >= Tempo.SLOWEST && whole <= Tempo.FASTEST && Tempo.isBeat(beat);
        return fits ? Optional.of(new Tempo((int) whole, beat)) : Optional.empty();
    }
}
