package groundbass.score;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;

/** One transcribed bass part: a header and at least one bar. Everything else is made from this value. */
public record Line(Header header, List<Bar> bars) {
    public static final int MOST_BARS = 2000;
    public static final int MOST_NOTES = 50_000;

    public Line {
        Objects.requireNonNull(header);
        bars = List.copyOf(bars);
        if (bars.isEmpty()) {
            throw new IllegalArgumentException("a line has at least one bar");
        }
        if (bars.stream().skip(1).anyMatch(Bar::isPickup)) {
            throw new IllegalArgumentException("only the first bar can be a pickup");
        }
        checkNeck(header, bars);
        var meters = checkMeters(header, bars);
        Passes.faults(bars).stream().findFirst().ifPresent(fault -> {
            throw new IllegalArgumentException("repeats do not agree: " + fault);
        });
        checkHeldNotes(bars);
        new LineChecks(header, bars, meters).all();
    }

    /** The number of the first bar: 0 for a pickup. */
    public int firstNumber() {
        return bars.get(0).isPickup() ? 0 : 1;
    }

    /** Where in {@link #bars()} the bar of this number stands. */
    public int indexOf(int number) {
        return number - firstNumber();
    }

    public Bar bar(int number) {
        return bars.get(indexOf(number));
    }

    /** What holds at each bar, in their order. */
    public List<InForce> inForce() {
        var all = new ArrayList<InForce>();
        var now =
                new InForce(firstNumber(), header.key(), header.meter(), header.tempo(), header.feel(), header.style());
        for (var bar : bars) {
            var changes = bar.changes();
            now = new InForce(
                    firstNumber() + all.size(),
                    changes.key().orElse(now.key()),
                    changes.meter().orElse(now.meter()),
                    changes.tempo().orElse(now.tempo()),
                    changes.feel().orElse(now.feel()),
                    changes.style().orElse(now.style()));
            all.add(now);
            now = slowed(now, changes);
        }
        return List.copyOf(all);
    }

    /** The order in which the bars are played, repeats taken. */
    public List<Passes.Played> played() {
        return Passes.unroll(bars);
    }

    private static InForce slowed(InForce now, Changes changes) {
        return changes.slowingTo()
                .map(perMinute -> new InForce(
                        now.number(),
                        now.key(),
                        now.meter(),
                        new Tempo(perMinute, now.tempo().beat()),
                        now.feel(),
                        now.style()))
                .orElse(now);
    }

    private static void checkNeck(Header header, List<Bar> bars) {
        for (var bar : bars) {
            for (var note : bar.notes()) {
                boolean onNeck = note.string() <= header.tuning().size()
                        && note.ornaments().fit(note.place(), header.frets());
                if (!onNeck) {
                    throw new IllegalArgumentException("not on this neck: " + note.place());
                }
            }
        }
    }

    /** No bar is longer than its meter; a pickup ends with its bar. */
    private static List<Meter> checkMeters(Header header, List<Bar> bars) {
        var meters = new ArrayList<Meter>();
        var meter = header.meter();
        for (var bar : bars) {
            meter = bar.changes().meter().orElse(meter);
            if (bar.to().isAfter(meter.length()) || (bar.isPickup() && !bar.to().equals(meter.length()))) {
                throw new IllegalArgumentException("a bar of " + meter + " cannot end at " + bar.to());
            }
            meters.add(meter);
        }
        return meters;
    }

    /** A note may be held into the next bar, not over a repeat sign, not past the end, not into a string's next note. */
    private static void checkHeldNotes(List<Bar> bars) {
        Map<Integer, Fraction> soundingUntil = new HashMap<>();
        Fraction start = Fraction.ZERO;
        for (int i = 0; i < bars.size(); i++) {
            var bar = bars.get(i);
            for (var note : bar.notes()) {
                var until = soundingUntil.getOrDefault(note.string(), Fraction.ZERO);
                if (until.isAfter(start.plus(note.onset()).minus(bar.from()))) {
                    throw new IllegalArgumentException("string " + note.string() + " still sounds in bar index " + i);
                }
                soundingUntil.put(note.string(), start.plus(note.end()).minus(bar.from()));
            }
            start = start.plus(bar.length());
            boolean closed = i + 1 == bars.size() || Passes.isSeam(bars, i);
            var end = start;
            if (closed && soundingUntil.values().stream().anyMatch(until -> until.isAfter(end))) {
                throw new IllegalArgumentException("a note is held over a repeat sign or the end, bar index " + i);
            }
        }
    }
}
