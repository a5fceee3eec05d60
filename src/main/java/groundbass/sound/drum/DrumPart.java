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
import java.util.function.ToDoubleFunction;

/** Plays the drum hits of a band; an open hat rings until the hats meet again. */
public final class DrumPart {
    public static final Set<Piece> CLOSING = Set.of(Piece.HAT, Piece.PEDAL, Piece.OPEN);

    private DrumPart() {}

    /** @param closed when the hats meet after these hits, in seconds; far away for never */
    public static Unit of(SampleRate rate, List<DrumHit> hits, double closed) {
        return of(rate, hits, closed, piece -> 1);
    }

    /** What is to be added on the left and taken away on the right, so that each piece stands where it does. */
    public static Unit side(SampleRate rate, List<DrumHit> hits, double closed) {
        return of(rate, hits, closed, piece -> -place(piece));
    }

    /** From -1, left, to 1, right, as who sits at the kit hears it (common practice, no source). */
    private static double place(Piece piece) {
        return switch (piece) {
            case KICK -> 0;
            case SNARE, RIM -> -0.06;
            case CLAP -> 0.1;
            case HAT, OPEN, PEDAL -> -0.3;
            case RIDE, BELL -> 0.4;
            case CRASH -> -0.45;
            case HIGHTOM -> -0.25;
            case MIDTOM -> 0.1;
            case LOWTOM -> 0.4;
            case SHAKER -> 0.35;
            case TAMBOURINE -> -0.35;
            case COWBELL -> 0.25;
        };
    }

    private static Unit of(SampleRate rate, List<DrumHit> hits, double closed, ToDoubleFunction<Piece> gain) {
        var shots = new ArrayList<Shot>();
        long closes = rate.at(closed);
        for (int i = hits.size() - 1; i >= 0; i--) {
            var hit = hits.get(i);
            long at = rate.at(hit.seconds());
            long until = hit.piece() == Piece.OPEN ? closes : Long.MAX_VALUE;
            float force = (float) (hit.force() * gain.applyAsDouble(hit.piece()));
            shots.add(new Shot(at, DrumKit.CD.sample(hit.piece(), hit.stroke(), i), force, until));
            closes = CLOSING.contains(hit.piece()) ? at : closes;
        }
        Collections.reverse(shots);
        return new OneShotSampler(rate, shots);
    }
}
