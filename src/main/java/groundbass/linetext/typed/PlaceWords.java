package groundbass.linetext.typed;

import groundbass.linetext.typed.Event.Until;
import groundbass.score.Arrival;
import groundbass.score.Ornaments;
import groundbass.score.Technique;
import java.util.Optional;

/** The words that stand behind one place. */
public record PlaceWords(
        Optional<Technique> pluck,
        Optional<Arrival> arrival,
        Ornaments ornaments,
        Optional<TypedTrill> trill,
        Optional<Until> until) {
    public static final PlaceWords NONE =
            new PlaceWords(Optional.empty(), Optional.empty(), Ornaments.NONE, Optional.empty(), Optional.empty());

    public boolean isNone() {
        return equals(NONE);
    }

    public PlaceWords with(Technique technique) {
        return new PlaceWords(Optional.of(technique), arrival, ornaments, trill, until);
    }

    public PlaceWords with(Arrival newArrival) {
        return new PlaceWords(pluck, Optional.of(newArrival), ornaments, trill, until);
    }

    public PlaceWords with(Ornaments newOrnaments) {
        return new PlaceWords(pluck, arrival, newOrnaments, trill, until);
    }

    public PlaceWords with(TypedTrill newTrill) {
        return new PlaceWords(pluck, arrival, ornaments, Optional.of(newTrill), until);
    }

    public PlaceWords with(Until newUntil) {
        return new PlaceWords(pluck, arrival, ornaments, trill, Optional.of(newUntil));
    }
}
