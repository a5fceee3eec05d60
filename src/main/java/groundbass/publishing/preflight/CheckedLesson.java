package groundbass.publishing.preflight;

import groundbass.text.Message;
import java.util.List;
import java.util.Optional;

/**
 * How a draft stands.
 *
 * @param items one for each checkpoint, in their order; none of a lesson that is not there, and one of a lesson at which this
 *     program fails
 */
public record CheckedLesson(List<CheckedItem> items) {
    public static final CheckedLesson NONE = new CheckedLesson(List.of());

    public CheckedLesson {
        items = List.copyOf(items);
    }

    /** One at which this program itself fails: of all checkpoints only that. */
    public static CheckedLesson unjudged() {
        var remark = Preflight.unjudged();
        return new CheckedLesson(
                List.of(new CheckedItem(remark.point(), remark.message(), List.of(remark), List.of(remark))));
    }

    /** All that is to be said of it. */
    public List<LessonRemark> remarks() {
        return items.stream().flatMap(item -> item.remarks().stream()).toList();
    }

    /** Those of the remarks that keep it from going out. */
    public List<LessonRemark> holding() {
        return items.stream().flatMap(item -> item.holding().stream()).toList();
    }

    /** Those that only wait to be accepted. */
    public List<LessonRemark> asking() {
        return holding().stream().filter(LessonRemark::asks).toList();
    }

    /** In what the draft differs from what readers see or will see; empty where it does not. */
    public Optional<Message> differs() {
        return remarks().stream()
                .filter(remark -> remark.point() == Checkpoint.RELEASE)
                .map(LessonRemark::message)
                .findFirst();
    }
}
