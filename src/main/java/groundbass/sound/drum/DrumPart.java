package groundbass.sound.drum;

import groundbass.groove.DrumHit;
import groundbass.groove.Piece;
import groundbass.signal.SampleRate;
import groundbass.sound.unit.OneShotSampler;
import groundbass.sound.unit.OneShotSampler.Shot;
import groundbass.sound.unit.Unit;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Set;

/** Plays the drum hits of a band; an open hat rings until the hats meet again. */
public final class DrumPart {
    public static final Set<Piece> CLOSING = Set.of(Piece.HAT, Piece.PEDAL, Piece.OPEN);

    private DrumPart() {}

    /** @param closed when the hats meet after these hits, in seconds; far away for never */
    public static Unit of(SampleRate rate, List<DrumHit> hits, double closed) {
        var shots = new ArrayList<Shot>();
        long closes = rate.at(closed);
        for (int i = hits.size() - 1; i >= 0; i--) {
            var hit = hits.get(i);
            long at = rate.at(hit.seconds());
            long until = hit.piece() == Piece.OPEN ? closes : Long.MAX_VALUE;
            shots.add(new Shot(at, DrumKit.CD.sample(hit.piece(), hit.stroke(), i), (float) hit.force(), until));
            closes = CLOSING.contains(hit.piece()) ? at : closes;
        }
        Collections.reverse(shots);
        return new OneShotSampler(rate, shots);
    }
}
