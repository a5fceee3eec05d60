package groundbass.engraving.sign.curve;

import groundbass.engraving.sketch.Sketch;
import groundbass.engraving.sketch.Spot;
import groundbass.engraving.spacing.HeadPlace;
import groundbass.engraving.spacing.Labels;
import groundbass.score.Arrival;
import groundbass.score.Note;
import groundbass.score.Passage;
import groundbass.score.Place;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/**
 * A note that the fretting hand reaches from the one before it on its string, as far as a system shows the way.
 *
 * @param source where that one stands, if it is on this system
 * @param target where the note itself stands, if it is on this system; one of the two is
 */
record Reached(Optional<End> source, Optional<End> target, Note from, Note to, double start, double end) {
    private static final double FROM_BARLINE = 0.2;

    /** One head of a chord in its place. */
    record End(Spot spot, HeadPlace head) {
        boolean isOuter(boolean above) {
            var cell = spot.cell();
            return head.position() == (above ? cell.highest() : cell.lowest());
        }

        boolean isAlone() {
            return spot.cell().heads().size() == 1;
        }
    }

    /** Those that lead to a note of this system in time, then those that leave it. */
    static List<Reached> of(Sketch sketch) {
        var all = new ArrayList<Reached>();
        for (int i = 0; i < sketch.spots().size(); i++) {
            var spot = sketch.spots().get(i);
            for (var head : spot.cell().heads()) {
                if (Labels.isShown(head.head()) && isReached(head.head().note())) {
                    into(sketch, i, new End(spot, head)).ifPresent(all::add);
                }
            }
        }
        for (int string = 1; string <= sketch.strings(); string++) {
            out(sketch, string).ifPresent(all::add);
        }
        return all;
    }

    private static boolean isReached(Note note) {
        return note.arrival().filter(arrival -> !arrival.isGrace()).isPresent();
    }

    private static Optional<Reached> into(Sketch sketch, int index, End target) {
        var note = target.head().head().note();
        var spot = target.spot();
        for (int i = index - 1; i >= 0; i--) {
            var source = on(sketch.spots().get(i), note.string());
            if (sketch.spots().get(i).x() < spot.x() && source.isPresent()) {
                double start = source.get().spot().middle();
                return Optional.of(new Reached(
                        source, Optional.of(target), source.get().head().head().note(), note, start, spot.middle()));
            }
        }
        double start = sketch.plan().bars().get(0).start();
        return sketch.earlier(note.string())
                .map(from -> new Reached(Optional.empty(), Optional.of(target), from, note, start, spot.middle()));
    }

    private static Optional<Reached> out(Sketch sketch, int string) {
        var last = sketch.plan().bars().get(sketch.plan().bars().size() - 1);
        for (int i = sketch.spots().size() - 1; i >= 0; i--) {
            var source = on(sketch.spots().get(i), string);
            if (source.isPresent()) {
                double start = source.get().spot().middle();
                return sketch.later(string)
                        .filter(Reached::isReached)
                        .map(to -> new Reached(
                                source,
                                Optional.empty(),
                                source.get().head().head().note(),
                                to,
                                start,
                                last.end() - FROM_BARLINE));
            }
        }
        return Optional.empty();
    }

    private static Optional<End> on(Spot spot, int string) {
        return spot.cell().heads().stream()
                .filter(head -> head.head().note().string() == string)
                .findFirst()
                .map(head -> new End(spot, head));
    }

    Arrival.Kind kind() {
        return to.arrival().orElseThrow().kind();
    }

    /** The note that the way leads to, or leaves from where that is on a later system. */
    Passage owner() {
        return target.or(() -> source).orElseThrow().spot().owner();
    }

    /** The head that is on this system; the target where both are. */
    HeadPlace head() {
        return target.or(() -> source).orElseThrow().head();
    }

    /** Whether no new stroke sounds it, so that a slur leads to it. */
    boolean slurred() {
        return to.pluck().isEmpty();
    }

    int string() {
        return to.string();
    }

    /** Up the neck 1, down it -1. */
    int direction() {
        return fret(from) <= fret(to) ? 1 : -1;
    }

    private static int fret(Note note) {
        return note.place() instanceof Place.Fretted fretted ? fretted.fret() : 0;
    }

    /** Whether both lead from one moment to one moment, so that one curve does for them. */
    boolean besides(Reached that) {
        return start == that.start && end == that.end;
    }
}
