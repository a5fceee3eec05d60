package groundbass.engraving.mark;

import groundbass.engraving.mark.Group.Role;
import groundbass.score.Passage;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Optional;

/**
 * One page of marks.
 *
 * @param width, height in staff spaces
 * @param staffSpace how large a staff space is printed, in millimetres
 */
public record Page(double width, double height, double staffSpace, List<Part> parts) {
    public Page {
        parts = List.copyOf(parts);
    }

    /**
     * A stretch of the page that is read as one.
     *
     * @param bars where the bars of a system lie; empty for what is no system
     */
    public record Part(Group group, List<Mark> marks, List<BarPlace> bars) {
        public Part {
            marks = List.copyOf(marks);
            bars = List.copyOf(bars);
        }

        public Part(Group group, List<Mark> marks) {
            this(group, marks, List.of());
        }

        /** The same part of another piece of the document. */
        public Part of(int piece) {
            return new Part(new Group(group.role(), group.passage(), group.box(), piece), marks, bars);
        }

        private Part without(Kind kind) {
            return new Part(
                    group, marks.stream().filter(mark -> mark.kind() != kind).toList(), bars);
        }

        public Part moved(double dx, double dy) {
            var box = group.box().moved(dx, dy);
            return new Part(
                    new Group(group.role(), group.passage(), box, group.piece()),
                    marks.stream().map(mark -> mark.moved(dx, dy)).toList(),
                    bars.stream().map(bar -> bar.moved(dx)).toList());
        }

        public void drawOn(Canvas canvas) {
            canvas.begin(group);
            var owned = new HashMap<Passage, List<Mark>>();
            for (var mark : marks) {
                if (mark.owner().isPresent()) {
                    owned.computeIfAbsent(mark.owner().get(), owner -> new ArrayList<>())
                            .add(mark);
                } else {
                    mark.shape().drawOn(canvas);
                }
            }
            var moments = new ArrayList<Moment>(owned.size());
            owned.forEach((owner, its) -> moments.add(Moment.of(owner, its)));
            moments.sort(Moment.IN_READING_ORDER);
            moments.forEach(moment -> moment.drawOn(canvas, group.piece()));
            canvas.end();
        }
    }

    /** What belongs to one stretch of a system. */
    private record Moment(Passage owner, Role role, List<Mark> marks) {
        /** By time; what is said of a note comes before the note. */
        static final Comparator<Moment> IN_READING_ORDER = Comparator.comparing((Moment moment) -> moment.owner.from())
                .thenComparing(moment -> moment.role == Role.EVENT)
                .thenComparing(moment -> moment.owner.to());

        static Moment of(Passage owner, List<Mark> marks) {
            boolean plays = marks.stream().anyMatch(mark -> mark.kind().isNoteOrRest());
            return new Moment(owner, plays ? Role.EVENT : Role.ANNOTATION, marks);
        }

        void drawOn(Canvas canvas, int piece) {
            var box = marks.get(0).box();
            for (var mark : marks) {
                box = box.union(mark.box());
            }
            canvas.begin(new Group(role, Optional.of(owner), box, piece));
            marks.forEach(mark -> mark.shape().drawOn(canvas));
            canvas.end();
        }
    }

    public void drawOn(Canvas canvas) {
        parts.forEach(part -> part.drawOn(canvas));
    }

    /** The same page without marks of one kind. */
    public Page without(Kind kind) {
        var kept = parts.stream().map(part -> part.without(kind)).toList();
        return new Page(width, height, staffSpace, kept);
    }

    public List<Mark> marks() {
        return parts.stream().flatMap(part -> part.marks().stream()).toList();
    }
}
