package groundbass.intake.smf;

import groundbass.intake.notice.NoticeList;
import groundbass.score.Fraction;
import groundbass.score.Line;
import groundbass.score.Meter;
import groundbass.text.Message;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeMap;

/** Lays bars over a file, by its time signatures, from where its music begins to behind its last note. */
final class BarLines {
    private BarLines() {}

    /** Whether a line has such a signature; where it has none, common time stands. */
    static boolean isKnown(Smf.Signature signature) {
        return Meter.isUnit(signature.unit()) && signature.counts() > 0 && signature.counts() <= Meter.MOST_COUNTS;
    }

    static List<TickBar> of(List<Smf.Signature> signatures, long from, long to, int perQuarter, NoticeList notices) {
        var byTick = new TreeMap<Long, Meter>();
        for (var signature : signatures) {
            byTick.put(
                    signature.tick(),
                    isKnown(signature) ? Meter.of(signature.counts(), signature.unit()) : Meter.COMMON);
        }
        if (byTick.floorKey(from) == null) {
            notices.guessed(Message.of("intake.guessed.meter", Meter.COMMON.toString()));
        }
        var bars = new ArrayList<TickBar>();
        var start = Fraction.of(from);
        while (start.isBefore(Fraction.of(to)) && bars.size() < Line.MOST_BARS) {
            var bar = bar(byTick, start, perQuarter);
            bars.add(bar);
            start = bar.end();
        }
        if (start.isBefore(Fraction.of(to))) {
            notices.leftOut(Message.of("intake.left.bars", Line.MOST_BARS));
        }
        return bars;
    }

    /** A bar ends early where another signature begins inside it, on the quarter of a count that is nearest. */
    private static TickBar bar(TreeMap<Long, Meter> byTick, Fraction start, int perQuarter) {
        var now = byTick.floorEntry(start.floor());
        var meter = now == null ? Meter.COMMON : now.getValue();
        var whole = new TickBar(start, meter, meter.length(), perQuarter);
        var next = byTick.higherKey(start.floor());
        if (next == null || !Fraction.of(next).isBefore(whole.end())) {
            return whole;
        }
        var quarter = meter.count().dividedBy(4);
        var length = Fraction.of(next).minus(start).dividedBy(4L * perQuarter);
        var counts =
                Math.max(1, length.dividedBy(quarter).plus(Fraction.of(1, 2)).floor());
        return new TickBar(start, meter, quarter.times(counts).min(meter.length()), perQuarter);
    }
}
