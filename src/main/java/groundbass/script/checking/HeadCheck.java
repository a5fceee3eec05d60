package groundbass.script.checking;

import groundbass.score.Bar;
import groundbass.score.ChordAt;
import groundbass.score.Feel;
import groundbass.score.InForce;
import groundbass.score.Tempo;
import groundbass.script.claims.Claim;
import groundbass.theory.ChordSymbol;
import groundbass.theory.ChordSymbol.Chord;
import groundbass.theory.Key;
import java.util.List;
import java.util.function.Function;

/** Checks what is said of key, meter, tempo, feel, chords and length. Where the line changes them, any of them will do. */
public final class HeadCheck {
    private final Timeline timeline;
    private final List<InForce> inForce;

    public HeadCheck(Timeline timeline) {
        this.timeline = timeline;
        this.inForce = timeline.line().inForce();
    }

    private <T> List<T> all(Function<InForce, T> part) {
        return inForce.stream().map(part).distinct().toList();
    }

    public Verdict check(Claim.KeyIs claim) {
        var keys = all(InForce::key);
        var said = claim.key();
        if (keys.stream().anyMatch(key -> isSame(key, said))) {
            return Verdict.AGREES;
        }
        // teachers call a dorian line minor and a mixolydian one major
        boolean loose = keys.stream()
                .anyMatch(key -> key.tonic().pitchClass() == said.tonic().pitchClass()
                        && key.mode().isMinorish() == said.mode().isMinorish());
        return loose ? Verdict.CANNOT_TELL : new Verdict.Contradicts(new Right.KeyThere(keys.get(0)));
    }

    private static boolean isSame(Key one, Key other) {
        return one.tonic().pitchClass() == other.tonic().pitchClass() && one.mode() == other.mode();
    }

    public Verdict check(Claim.TonicIs claim) {
        var keys = all(InForce::key);
        boolean same = keys.stream()
                .anyMatch(key -> key.tonic().pitchClass() == claim.tonic().pitchClass());
        return same ? Verdict.AGREES : new Verdict.Contradicts(new Right.KeyThere(keys.get(0)));
    }

    public Verdict check(Claim.MeterIs claim) {
        var meters = all(InForce::meter);
        boolean same = meters.stream()
                .anyMatch(meter -> meter.counts() == claim.meter().counts()
                        && meter.unit() == claim.meter().unit());
        return same ? Verdict.AGREES : new Verdict.Contradicts(new Right.MeterThere(meters.get(0)));
    }

    public Verdict check(Claim.TempoIs claim) {
        var tempos = all(InForce::tempo).stream().map(Tempo::perMinute).toList();
        return tempos.contains(claim.perMinute())
                ? Verdict.AGREES
                : new Verdict.Contradicts(new Right.TempoThere(tempos.get(0)));
    }

    public Verdict check(Claim.FeelIs claim) {
        var swung = all(InForce::feel).stream()
                .map(Feel::swing)
                .map(swing -> swing.isPresent())
                .toList();
        return swung.contains(claim.swung())
                ? Verdict.AGREES
                : new Verdict.Contradicts(new Right.FeelThere(!claim.swung()));
    }

    public Verdict check(Claim.BarCountIs claim) {
        int bars = timeline.line().bars().size();
        boolean pickup = timeline.line().firstNumber() == 0;
        boolean same = claim.bars() == bars || (pickup && claim.bars() == bars - 1);
        return same ? Verdict.AGREES : new Verdict.Contradicts(new Right.LastBar(timeline.lastBar()));
    }

    /** Only where the bar names chords; a chord that lasts from the bar before is taken from there. */
    public Verdict check(Claim.ChordIs claim) {
        if (claim.where().bars().size() != 1
                || claim.where().carried()
                || !timeline.has(claim.where().bars().get(0))) {
            return Verdict.CANNOT_TELL;
        }
        int number = claim.where().bars().get(0);
        var chords = chords(number);
        if (chords.isEmpty()) {
            return Verdict.CANNOT_TELL;
        }
        return chords.stream().anyMatch(at -> isSame(at.chord(), claim.chord()))
                ? Verdict.AGREES
                : new Verdict.Contradicts(new Right.ChordsThere(
                        number, chords.stream().map(ChordAt::chord).toList()));
    }

    /** The bass note of a slash chord need not be said. */
    private static boolean isSame(ChordSymbol there, ChordSymbol said) {
        if (there instanceof Chord one && said instanceof Chord other) {
            boolean bass = other.bass().isEmpty() || other.bass().equals(one.bass());
            return bass && one.root().pitchClass() == other.root().pitchClass() && one.quality() == other.quality();
        }
        return there.equals(said);
    }

    private List<ChordAt> chords(int number) {
        var line = timeline.line();
        Bar bar = line.bar(number);
        int from = number;
        while (bar.chords().isEmpty() && from > line.firstNumber()) {
            from--;
            bar = line.bar(from);
        }
        return from == number || bar.chords().isEmpty()
                ? bar.chords()
                : bar.chords().subList(bar.chords().size() - 1, bar.chords().size());
    }
}
