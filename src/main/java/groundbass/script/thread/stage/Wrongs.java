package groundbass.script.thread.stage;

import groundbass.score.Position;
import groundbass.script.checking.Counts;
import groundbass.script.checking.Right;
import groundbass.script.checking.Timeline.At;
import groundbass.script.checking.Timeline.Stretch;
import groundbass.script.checking.WhatIsRight;
import java.util.List;
import java.util.Set;

/** Makes what would be right. */
public final class Wrongs {
    private static final Set<Part.Kind> OF_TECHNIQUE = Set.of(Part.Kind.MANNER, Part.Kind.DEAD, Part.Kind.SHORT);

    private Wrongs() {}

    /** The note as it is, told by what was said wrongly of it. */
    public static Right note(At at, Item said, Stage stage) {
        boolean technique =
                said.parts().stream().anyMatch(part -> OF_TECHNIQUE.contains(part.kind()) && !part.fits(at));
        boolean length = said.has(Part.Kind.LENGTH) || said.has(Part.Kind.TUPLET);
        return WhatIsRight.note(stage.timeline(), at, new Right.Told(technique, length, false));
    }

    /** What begins a stretch. */
    public static Right start(Stretch stretch, Item said, Stage stage) {
        var notes = stage.notes(List.of(stretch));
        boolean sounds = notes.stream().anyMatch(at -> at.note().onset().equals(stretch.from()));
        if (sounds && !said.rest()) {
            return note(notes.get(0), said, stage);
        }
        String count = Counts.of(stage.timeline(), stretch.bar(), stretch.from());
        var position = new Position(stretch.bar(), stretch.from());
        if (!sounds) {
            boolean rest = stage.timeline().isSilent(stretch.bar(), stretch.from());
            return new Right.NothingBegins(position, count, rest);
        }
        return note(notes.get(0), Item.NOTHING, stage);
    }

    /** The first event that is not as these items say, or what begins a stretch. */
    public static Right first(List<Item> said, List<Together> events, Stretch stretch, Stage stage) {
        for (int i = 0; i < Math.min(said.size(), events.size()); i++) {
            var event = events.get(i);
            if (!event.fits(said.get(i))) {
                return start(new Stretch(event.bar(), event.from(), event.to()), said.get(i), stage);
            }
        }
        return start(stretch, said.get(0), stage);
    }
}
