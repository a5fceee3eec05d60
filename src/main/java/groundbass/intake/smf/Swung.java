package groundbass.intake.smf;

import groundbass.score.Fraction;
import groundbass.score.Swing;
import java.util.List;
import java.util.Optional;

/**
 * Whether a file plays pairs of eighths long and short: every stroke lies on a beat or where the second of such a pair
 * does, and several do (common practice, no source). The pairs are then written straight, and the line says how they swing.
 */
record Swung(Optional<Swing> swing) {
    private static final List<Swing> RATIOS = List.of(new Swing(Swing.EIGHTHS, 2, 1), new Swing(Swing.EIGHTHS, 3, 2));
    private static final Fraction HALF = Fraction.of(1, 2);
    private static final int SEVERAL = 4;
    private static final int QUARTERS = 4;

    /** @param strokes when notes begin, each in its bar */
    static Swung of(List<TickBar> bars, List<Fraction> strokes) {
        boolean quarters = bars.stream()
                .allMatch(bar -> bar.meter().unit() == QUARTERS
                        && bar.meter().pulse().equals(bar.meter().count()));
        return new Swung(RATIOS.stream()
                .filter(swing -> quarters && isPlayed(swing, strokes))
                .findFirst());
    }

    private static boolean isPlayed(Swing swing, List<Fraction> strokes) {
        var beat = swing.unit().times(2);
        var second = swing.secondOnset();
        long seconds =
                strokes.stream().filter(at -> at.modulo(beat).equals(second)).count();
        boolean others = strokes.stream().map(at -> at.modulo(beat)).anyMatch(at -> !at.isZero() && !at.equals(second));
        return seconds >= SEVERAL && !others;
    }

    /** A time of a bar as it is written. */
    Fraction written(Fraction at) {
        return swing.map(each -> written(each, at)).orElse(at);
    }

    private static Fraction written(Swing swing, Fraction at) {
        var beat = swing.unit().times(2);
        var within = at.modulo(beat);
        var second = swing.secondOnset();
        var straight = within.isAfter(second)
                ? beat.times(HALF)
                        .plus(within.minus(second).times(beat).times(HALF).dividedBy(beat.minus(second)))
                : within.times(beat).times(HALF).dividedBy(second);
        return at.minus(within).plus(straight);
    }
}
