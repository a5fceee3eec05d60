package groundbass.intake.xml.document;

import groundbass.score.Fraction;
import java.math.BigDecimal;
import java.util.Optional;

/** Figures as the format writes them, as far as music needs them. */
public final class XmlNumbers {
    private static final int LONGEST = 18;
    private static final int MOST_DECIMALS = 4;
    private static final BigDecimal LARGEST = BigDecimal.valueOf(10_000_000);

    private XmlNumbers() {}

    /** A whole number of at most eight figures, with or without a sign. */
    public static Optional<Integer> whole(String text) {
        String figures = text.strip();
        return figures.matches("[+-]?\\d{1,8}") ? Optional.of(Integer.valueOf(figures)) : Optional.empty();
    }

    /** A number with or without decimals, cut after the fourth of them. */
    public static Optional<Fraction> decimal(String text) {
        String figures = text.strip();
        if (figures.length() > LONGEST || !figures.matches("-?(\\d+(\\.\\d*)?|\\.\\d+)")) {
            return Optional.empty();
        }
        var number = new BigDecimal(figures).setScale(MOST_DECIMALS, java.math.RoundingMode.DOWN);
        return number.abs().compareTo(LARGEST) > 0
                ? Optional.empty()
                : Optional.of(Fraction.of(number.unscaledValue().longValueExact(), 10_000));
    }
}
