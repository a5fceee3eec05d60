package groundbass.midi;

import groundbass.performance.Performance;
import groundbass.performance.TimedBar;
import groundbass.score.Fraction;
import groundbass.score.Meter;
import groundbass.theory.Key;

/** The first track: name, rights, tempo, meter, key, markers. */
final class Conductor {
    private final Performance performance;
    private final Opening opening;
    private final Track track = new Track();
    private Signature signature;
    private Key key;

    /** The figures of a time signature and how long its click is. */
    private record Signature(int counts, int unit, Fraction click) {
        static Signature of(Meter meter) {
            return new Signature(meter.counts(), meter.unit(), meter.pulse());
        }
    }

    private Conductor(Performance performance, Opening opening) {
        this.performance = performance;
        this.opening = opening;
        var first = performance.bars().get(0).inForce();
        this.signature = Signature.of(performance.countIn().meter());
        this.key = first.key();
    }

    static Track of(Performance performance, Opening opening) {
        return new Conductor(performance, opening).write();
    }

    private Track write() {
        var header = performance.line().header();
        if (!header.rights().isEmpty()) {
            track.copyright(header.rights());
        }
        track.name(header.title().isEmpty() ? "Line" : header.title());
        write(0, signature);
        track.exclusive(GeneralMidi.SYSTEM_ON);
        track.key(0, key);
        if (opening == Opening.COUNT_IN) {
            track.marker(0, "Count-in");
        }
        track.marker(Ticks.of(performance.start()), "Start");
        performance
                .tempos()
                .changes()
                .forEach(change -> track.tempo(Ticks.of(change.at()), change.quartersPerMinute()));
        performance.bars().forEach(this::write);
        performance
                .chords()
                .forEach(chord ->
                        track.words(Ticks.of(chord.when().at()), chord.chord().toString()));
        return track;
    }

    private void write(TimedBar bar) {
        long tick = Ticks.of(bar.start());
        var now = bar.bar().isPickup() ? signature : signature(bar);
        if (!now.equals(signature)) {
            write(tick, now);
        }
        if (!bar.inForce().key().equals(key)) {
            track.key(tick, bar.inForce().key());
        }
        signature = now;
        key = bar.inForce().key();
        bar.bar().changes().section().ifPresent(name -> track.marker(tick, name));
    }

    /** A bar cut short has a signature of its own, or the bars of any other program would run out of step. */
    private static Signature signature(TimedBar bar) {
        var meter = bar.inForce().meter();
        var length = bar.bar().length();
        long unit = Math.max(meter.unit(), length.denominator());
        boolean whole = length.equals(meter.length()) || Long.bitCount(unit) != 1;
        return whole
                ? Signature.of(meter)
                : new Signature((int) length.times(unit).floor(), (int) unit, meter.pulse());
    }

    private void write(long tick, Signature signature) {
        track.timeSignature(tick, signature.counts(), signature.unit(), signature.click());
    }
}
