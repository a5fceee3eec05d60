package groundbass.performance;

import groundbass.score.Direction;
import groundbass.score.Direction.Hairpin;
import groundbass.score.Dynamic;
import groundbass.score.Fraction;
import java.util.List;
import java.util.Optional;
import java.util.TreeMap;

/**
 * How loud a normal stroke is when, as MIDI counts it: by the dynamic that was played last, so that a repeat goes on as
 * loud as the bar before it ended, or between two of them where a hairpin leads from one to the other (rule: hairpin-course).
 * mf before the first, and again where the whole line begins anew.
 */
final class DynamicCourse {
    private final TreeMap<Fraction, Course> courses = new TreeMap<>();
    private Optional<Begun> open = Optional.empty();
    private int now = Velocity.of(Dynamic.MF);

    /** From one loudness evenly to another, which then holds. */
    private record Course(Fraction start, int from, Fraction end, int to) {
        int at(Fraction moment) {
            if (!moment.isBefore(end)) {
                return to;
            }
            var share = moment.minus(start).dividedBy(end.minus(start));
            return from + (int) Math.round((to - from) * share.toDouble());
        }
    }

    private record Begun(Fraction start, Hairpin hairpin, Fraction barEnd) {}

    DynamicCourse(List<TimedBar> bars) {
        int round = 0;
        for (var bar : bars) {
            if (bar.round() > round) {
                runOut();
                set(bar.start(), Dynamic.MF);
                round = bar.round();
            }
            for (var direction : bar.bar().directions()) {
                meet(bar, direction);
            }
        }
        runOut();
    }

    /** @param moment as written, before swing */
    int at(Fraction moment) {
        var course = courses.floorEntry(moment);
        return course == null ? Velocity.of(Dynamic.MF) : course.getValue().at(moment);
    }

    private void meet(TimedBar bar, Direction direction) {
        var moment = bar.moment(direction.at());
        if (direction instanceof Direction.Loudness loudness) {
            int to = Velocity.of(loudness.dynamic());
            open.ifPresent(begun -> close(begun, moment, leads(begun.hairpin(), to) ? to : step(begun.hairpin())));
            set(moment, loudness.dynamic());
        } else if (direction instanceof Hairpin hairpin) {
            open.ifPresent(begun -> close(begun, moment, step(begun.hairpin())));
            open = Optional.of(new Begun(moment, hairpin, bar.end()));
        }
    }

    private void set(Fraction moment, Dynamic dynamic) {
        now = Velocity.of(dynamic);
        courses.put(moment, new Course(moment, now, moment, now));
    }

    /** A hairpin that nothing follows ends with its bar. */
    private void runOut() {
        open.ifPresent(begun -> close(begun, begun.barEnd(), step(begun.hairpin())));
    }

    private void close(Begun begun, Fraction end, int to) {
        courses.put(begun.start(), new Course(begun.start(), now, end, to));
        now = to;
        open = Optional.empty();
    }

    private boolean leads(Hairpin hairpin, int to) {
        return hairpin.way() == Hairpin.Way.CRESCENDO ? to > now : to < now;
    }

    /** The next dynamic on a hairpin's way; the last one stays. */
    private int step(Hairpin hairpin) {
        int next = now;
        for (var dynamic : Dynamic.values()) {
            int velocity = Velocity.of(dynamic);
            boolean louder = hairpin.way() == Hairpin.Way.CRESCENDO;
            if (louder && velocity > now) {
                return velocity;
            }
            next = !louder && velocity < now ? velocity : next;
        }
        return next;
    }
}
