package groundbass.script.checking;

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
        int semitones = tuning.midi(Neck.place(claim.one())) - tuning.midi(Neck.place(claim.other()));
        int said = 12 * claim.octaves();
        boolean right = semitones == said || (claim.eitherWay() && semitones == -said);
        return right ? Verdict.AGREES : new Verdict.Contradicts(new Right.Interval(semitones));
    }

    public Verdict check(Claim.OctaveOfName claim) {
        var place = Neck.place(claim.one());
        return neck.isCalled(place, claim.other())
                ? Verdict.AGREES
                : new Verdict.Contradicts(neck.right(place, claim.other()));
    }
}
