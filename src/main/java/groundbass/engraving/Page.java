package groundbass.engraving;

import groundbass.score.Passage;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;

/**
 * One page of marks.
 *
 * @param width, height in staff spaces
 * @param staffSpace how large a staff space is printed, in millimetres
 */
public record Page(double width, double height, double staffSpace, List<Part> parts) {
    private static final Comparator<Passage> IN_TIME =
            Comparator.comparing(Passage::from).thenComparing(Passage::to);

    public Page {
        parts = List.copyOf(parts);
    }

    /** A stretch of the page that is read as one. */
    public record Part(Group group, List<Mark> marks) {
        public Part {
            marks = List.copyOf(marks);
        }

        void drawOn(Canvas canvas) {
            canvas.begin(group);
            marks.stream().filter(mark -> mark.owner().isEmpty()).forEach(mark -> mark.shape()
                    .drawOn(canvas));
            var owned = new ArrayList<>(
                    marks.stream().filter(mark -> mark.owner().isPresent()).toList());
            owned.sort(Comparator.comparing(mark -> mark.owner().orElseThrow(), IN_TIME));
            drawEvents(canvas, owned);
            canvas.end();
        }

        private static void drawEvents(Canvas canvas, List<Mark> inTime) {
            int from = 0;
            while (from < inTime.size()) {
                var owner = inTime.get(from).owner();
                int to = from;
                while (to < inTime.size() && inTime.get(to).owner().equals(owner)) {
                    to++;
                }
                drawEvent(canvas, owner, inTime.subList(from, to));
                from = to;
            }
        }

        private static void drawEvent(Canvas canvas, Optional<Passage> owner, List<Mark> marks) {
            var box = marks.stream().map(Mark::box).reduce(Box::union).orElseThrow();
            canvas.begin(new Group(Group.Role.EVENT, owner, box));
            marks.forEach(mark -> mark.shape().drawOn(canvas));
            canvas.end();
        }
    }

    public void drawOn(Canvas canvas) {
        parts.forEach(part -> part.drawOn(canvas));
    }

    public List<Mark> marks() {
        return parts.stream().flatMap(part -> part.marks().stream()).toList();
    }
}
