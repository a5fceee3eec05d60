package groundbass.intake.xml;

import groundbass.intake.xml.document.XmlElement;
import groundbass.intake.xml.document.XmlNumbers;
import groundbass.score.Fraction;
import groundbass.score.Meter;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/** Time signatures: figures, sums of figures, several of them side by side. */
final class Meters {
    private static final int FINEST_UNIT = 16;

    private Meters() {}

    /** Empty for music without a metre, and where a line has no such metre. */
    static Optional<Meter> of(XmlElement time) {
        var beats = time.all("beats").map(XmlElement::text).toList();
        var units = time.all("beat-type")
                .map(each -> XmlNumbers.whole(each.text()).orElse(0))
                .toList();
        boolean fits = !beats.isEmpty()
                && beats.size() == units.size()
                && units.stream().allMatch(Meter::isUnit);
        if (!fits) {
            return Optional.empty();
        }
        int unit = units.stream().mapToInt(Integer::intValue).max().orElse(4);
        var groups = new ArrayList<Integer>();
        for (int i = 0; i < beats.size(); i++) {
            int factor = unit / units.get(i);
            var figures = Arrays.stream(beats.get(i).split("\\+", -1))
                    .map(each -> XmlNumbers.whole(each).orElse(0))
                    .toList();
            figures.forEach(figure -> groups.add(figure > Meter.MOST_COUNTS ? 0 : figure * factor));
        }
        boolean countable = groups.stream().allMatch(group -> group > 0)
                && groups.stream().mapToInt(Integer::intValue).sum() <= Meter.MOST_COUNTS;
        if (!countable) {
            return Optional.empty();
        }
        return Optional.of(groups.size() == 1 ? Meter.of(groups.get(0), unit) : new Meter(unit, groups));
    }

    /** The simplest metre whose bar is as long, or the next longer one; empty where that would be too long. */
    static Optional<Meter> ofLength(Fraction length, int unit) {
        for (int figure : List.of(unit, 8, FINEST_UNIT)) {
            var counts = length.times(figure);
            if (counts.denominator() == 1 && counts.numerator() <= Meter.MOST_COUNTS && counts.isPositive()) {
                return Optional.of(Meter.of((int) counts.numerator(), figure));
            }
        }
        long counts = -length.times(-unit).floor();
        return counts >= 1 && counts <= Meter.MOST_COUNTS
                ? Optional.of(Meter.of((int) counts, unit))
                : Optional.empty();
    }
}
