package groundbass.script.checking;

import groundbass.score.Place.Fretted;
import groundbass.script.checking.Timeline.At;
import groundbass.theory.NoteName;
import java.util.Optional;

/** Makes what would be right. */
public final class WhatIsRight {
    private WhatIsRight() {}

    public static Right note(Timeline timeline, At at, Right.Told told) {
        var note = at.note();
        var name = note.place() instanceof Fretted place
                ? Optional.of(timeline.nameAt(at.bar(), place))
                : Optional.<NoteName>empty();
        return new Right.NoteThere(at.position(), Counts.of(timeline, at.bar(), note.onset()), note, name, told);
    }
}
