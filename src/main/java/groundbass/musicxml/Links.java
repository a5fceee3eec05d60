package groundbass.musicxml;

import groundbass.score.Arrival;
import groundbass.score.Line;
import groundbass.score.NoteAt;
import groundbass.writing.Head;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;

/** Which notes the fretting hand joins: each that is reached from the note before it on its string, and that one. */
final class Links {
    private final Map<NoteAt, Link> into = new HashMap<>();
    private final Map<NoteAt, Link> outOf = new HashMap<>();

    /**
     * How the one note follows from the other.
     *
     * @param slurred whether no new stroke sounds it
     */
    record Link(Arrival.Kind kind, boolean slurred) {}

    private Links() {}

    static Links of(Line line) {
        var links = new Links();
        var last = new HashMap<Integer, NoteAt>();
        for (int i = 0; i < line.bars().size(); i++) {
            for (var note : line.bars().get(i).notes()) {
                var here = NoteAt.of(line.firstNumber() + i, note);
                var before = Optional.ofNullable(last.put(note.string(), here));
                var arrival = note.arrival().filter(each -> !each.isGrace());
                if (before.isPresent() && arrival.isPresent()) {
                    var link = new Link(arrival.get().kind(), note.pluck().isEmpty());
                    links.outOf.put(before.get(), link);
                    links.into.put(here, link);
                }
            }
        }
        return links;
    }

    /** The way that leads to this note. */
    Optional<Link> into(Head head) {
        return Optional.ofNullable(into.get(NoteAt.of(head.noteBar(), head.note())));
    }

    /** The way that leads on from it. */
    Optional<Link> outOf(Head head) {
        return Optional.ofNullable(outOf.get(NoteAt.of(head.noteBar(), head.note())));
    }
}
