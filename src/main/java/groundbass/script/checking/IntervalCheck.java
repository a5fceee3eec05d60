package groundbass.script.checking;

import groundbass.score.Place.Fretted;
import groundbass.score.Tuning;
import groundbass.script.claims.Claim;

/** Checks how far places are apart; an octave is twelve semitones. */
public final class IntervalCheck {
    private final Tuning tuning;
    private final Neck neck;

    public IntervalCheck(Timeline timeline) {
        this.tuning = timeline.line().header().tuning();
        this.neck = new Neck(timeline);
    }

    public Verdict check(Claim.OctavesApart claim) {
        var one = Neck.place(claim.one());
        var other = Neck.place(claim.other());
        return one.isPresent() && other.isPresent() ? check(claim, one.get(), other.get()) : Verdict.CANNOT_TELL;
    }

    private Verdict check(Claim.OctavesApart claim, Fretted one, Fretted other) {
        int semitones = tuning.midi(one) - tuning.midi(other);
        int said = 12 * claim.octaves();
        boolean right = semitones == said || (claim.eitherWay() && semitones == -said);
        return right ? Verdict.AGREES : new Verdict.Contradicts(new Right.Interval(semitones));
    }

    public Verdict check(Claim.OctaveOfName claim) {
        return Neck.place(claim.one())
                .map(place -> neck.check(place, claim.other()))
                .orElse(Verdict.CANNOT_TELL);
    }
}
