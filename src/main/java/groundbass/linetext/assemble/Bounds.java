package groundbass.linetext.assemble;

import groundbass.linetext.source.Moment;
import groundbass.linetext.typed.CountLine.Target;
import groundbass.score.Copy;
import groundbass.score.Fraction;
import groundbass.score.Meter;
import groundbass.text.Message;

/** Says times as counts, for messages and for the printed text. */
public final class Bounds {
    private Bounds() {}

    static String from(BarExtent extent) {
        return Moment.at(extent.from(), extent.meter()).toString();
    }

    static String to(BarExtent extent) {
        return Moment.at(extent.to(), extent.meter()).toString();
    }

    static String text(Target target) {
        return target.from() + target.last().map(last -> "-" + last).orElse("");
    }

    /** The number of the count that a time just before {@code end} lies in. */
    public static int lastCount(Fraction end, Meter meter) {
        return Math.toIntExact(-end.dividedBy(meter.count()).negated().floor());
    }

    /** What a count line begins with that fills this stretch: {@code 2}, or {@code 2-3} past its first beat. */
    public static String counts(Copy.Span span, Fraction barEnd, Meter meter) {
        String from = Moment.at(span.from(), meter).toString();
        boolean oneBeat = span.to().equals(meter.beatEnd(span.from()).min(barEnd));
        return oneBeat ? from : from + "-" + lastCount(span.to(), meter);
    }

    /** {@code count 2}, {@code counts 2-3}, {@code the time from 2& to 3}. */
    static Message inWords(Copy.Span span, Meter meter) {
        boolean fromCount = span.from().isOnGrid(meter.count());
        boolean toCount = span.to().isOnGrid(meter.count());
        if (!fromCount || !toCount) {
            return Message.of(
                    "linetext.time.between",
                    Moment.at(span.from(), meter).toString(),
                    Moment.at(span.to(), meter).toString());
        }
        var first = Moment.at(span.from(), meter);
        int last = lastCount(span.to(), meter);
        return first.count().number() == last
                ? Message.of("linetext.time.count", first.toString())
                : Message.of("linetext.time.counts", first + "-" + last);
    }
}
