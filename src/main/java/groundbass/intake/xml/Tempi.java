package groundbass.intake.xml;

import groundbass.intake.draft.PlayedTempo;
import groundbass.intake.xml.document.XmlElement;
import groundbass.intake.xml.document.XmlNumbers;
import groundbass.score.Fraction;
import groundbass.score.Tempo;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Metronome marks. */
final class Tempi {
    private static final Fraction QUARTER = Fraction.of(1, 4);
    private static final Map<String, Fraction> SHAPES = Map.of(
            "maxima", Fraction.of(8),
            "long", Fraction.of(4),
            "breve", Fraction.of(2),
            "whole", Fraction.ONE,
            "half", Fraction.of(1, 2),
            "quarter", QUARTER,
            "eighth", Fraction.of(1, 8),
            "16th", Fraction.of(1, 16),
            "32nd", Fraction.of(1, 32),
            "64th", Fraction.of(1, 64));

    private Tempi() {}

    /** Empty where the mark says how two lengths are related, or no figure a line can have. */
    static Optional<Tempo> metronome(XmlElement metronome) {
        var beat = beat(metronome);
        return metronome
                .text("per-minute")
                .flatMap(XmlNumbers::decimal)
                .flatMap(figure -> beat.flatMap(each -> PlayedTempo.counted(figure, each)));
    }

    /** The shapes of a beat one after the other, with their dots; of those that are tied each is an element of its own. */
    private static Optional<Fraction> beat(XmlElement metronome) {
        var parts = new ArrayList<XmlElement>();
        for (var child : metronome.children()) {
            if (child.name().equals("beat-unit-tied")) {
                parts.addAll(child.children());
            } else {
                parts.add(child);
            }
        }
        return sum(parts);
    }

    private static Optional<Fraction> sum(List<XmlElement> parts) {
        var sum = Fraction.ZERO;
        var last = Fraction.ZERO;
        for (var part : parts) {
            if (part.name().equals("beat-unit")) {
                var shape = Optional.ofNullable(SHAPES.get(part.text()));
                if (shape.isEmpty() || sum.isAfter(Fraction.of(64))) {
                    return Optional.empty();
                }
                last = shape.get();
                sum = sum.plus(last);
            } else if (part.name().equals("beat-unit-dot") && last.denominator() <= 1 << 12) {
                last = last.dividedBy(2);
                sum = sum.plus(last);
            }
        }
        return sum.isPositive() ? Optional.of(sum) : Optional.empty();
    }
}
