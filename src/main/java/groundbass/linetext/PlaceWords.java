package groundbass.linetext;

import groundbass.linetext.Event.Until;
import groundbass.score.Arrival;
import groundbass.score.Ornaments;
import groundbass.score.Technique;
import java.util.Optional;

/** The words that stand behind one place. */
record PlaceWords(Optional<Technique> pluck, Optional<Arrival> arrival, Ornaments ornaments, Optional<Until> until) {
    static final PlaceWords NONE = new PlaceWords(Optional.empty(), Optional.empty(), Ornaments.NONE, Optional.empty());

    boolean isNone() {
        return equals(NONE);
    }

    PlaceWords with(Technique technique) {
        return new PlaceWords(Optional.of(technique), arrival, ornaments, until);
    }

    PlaceWords with(Arrival newArrival) {
        return new PlaceWords(pluck, Optional.of(newArrival), ornaments, until);
    }

    PlaceWords with(Ornaments newOrnaments) {
        return new PlaceWords(pluck, arrival, newOrnaments, until);
    }

    PlaceWords with(Until newUntil) {
        return new PlaceWords(pluck, arrival, ornaments, Optional.of(newUntil));
    }
}
