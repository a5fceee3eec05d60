package groundbass.script.checking;

import groundbass.score.Fraction;
import groundbass.score.Meter;
import groundbass.script.checking.Timeline.Stretch;
import groundbass.script.claims.Where;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Turns what was said of bars and beats into stretches of the line: every plausible reading of it. */
public final class Places {
    private final Timeline timeline;

    public Places(Timeline timeline) {
        this.timeline = timeline;
    }

    /**
     * One reading of a place.
     *
     * @param moments where a single moment is meant, that moment in each bar
     */
    public record Area(List<Stretch> stretches, List<Moment> moments) {}

    record Moment(int bar, Fraction at) {}

    /** All readings; none where the bars have no such beat. In compound meters a beat may be a count or a dotted one. */
    public List<Area> readings(Where where) {
        var byCounts = area(where, false);
        boolean other =
                where.bars().stream().anyMatch(bar -> !isPlain(timeline.at(bar).meter()));
        var all = new ArrayList<Area>();
        byCounts.ifPresent(all::add);
        if (other && where.hasTime()) {
            area(where, true).ifPresent(all::add);
        }
        return all;
    }

    private static boolean isPlain(Meter meter) {
        return meter.beats().stream().allMatch(beat -> beat == 1);
    }

    private Optional<Area> area(Where where, boolean byBeats) {
        var stretches = new ArrayList<Stretch>();
        var moments = new ArrayList<Moment>();
        for (int bar : where.bars()) {
            var here = stretches(where, bar, byBeats);
            if (here.isEmpty()) {
                return Optional.empty();
            }
            stretches.addAll(here);
            if (where.isMoment()) {
                var beat = here.get(0);
                var length = beat.to().minus(beat.from());
                moments.add(new Moment(
                        bar,
                        beat.from().plus(length.times(Fraction.of(where.part().orElse(0), 4)))));
            }
        }
        return Optional.of(new Area(stretches, moments));
    }

    private List<Stretch> stretches(Where where, int bar, boolean byBeats) {
        var beats = beats(bar, byBeats);
        if (where.lastBeats() > 0) {
            return beats.subList(Math.max(0, beats.size() - where.lastBeats()), beats.size());
        }
        if (where.beats().isEmpty()) {
            return List.of(timeline.whole(bar));
        }
        boolean known = where.beats().stream().allMatch(beat -> beat >= 1 && beat <= beats.size());
        return known ? where.beats().stream().map(beat -> beats.get(beat - 1)).toList() : List.of();
    }

    /** The bar's counts, or its beats. */
    public List<Stretch> beats(int bar, boolean byBeats) {
        var meter = timeline.at(bar).meter();
        var all = new ArrayList<Stretch>();
        if (byBeats) {
            for (var start : meter.beatStarts()) {
                all.add(new Stretch(bar, start, meter.beatEnd(start)));
            }
        } else {
            for (int count = 0; count < meter.counts(); count++) {
                all.add(new Stretch(
                        bar, meter.count().times(count), meter.count().times(count + 1L)));
            }
        }
        return all;
    }
}
