package groundbass.web.desk.room;

import groundbass.publishing.preflight.CheckedItem;
import groundbass.publishing.preflight.CheckedLesson;
import groundbass.publishing.preflight.Checkpoint;
import groundbass.publishing.preflight.LessonRemark;
import groundbass.text.Message;
import java.util.List;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * What is to be said of a lesson before it goes out, each with the way to where it is mended.
 *
 * @param blocking what keeps it from going out until it is mended
 * @param asking what keeps it until the educator accepts it
 * @param others what is only told, and what was accepted
 * @param accepting the asking ones, as the form sends them when they are accepted
 * @param items all of this and what is in order, by checkpoint
 */
public record PreflightView(
        List<Row> blocking, List<Row> asking, List<Row> others, String accepting, List<Item> items) {
    /** What belongs to the whole site and not to the lesson. */
    private static final Set<String> OF_SITE = Set.of("address", "imprint", "mail");

    private static final Pattern EXERCISE = Pattern.compile("exercises\\[(\\d{1,3})]");

    /**
     * A remark.
     *
     * @param field what it is about, as {@link LessonRemark} names it
     * @param way where it is mended
     */
    public record Row(Message message, String field, String way) {
        /** Whether that page is open to the owner of the site alone. */
        public boolean isForOwner() {
            return OF_SITE.contains(field);
        }
    }

    /**
     * A checkpoint.
     *
     * @param word of it, for the address on the page
     * @param state fine, open or keeps-back
     * @param way where it is mended
     * @param forOwner whether that page is open to the owner of the site alone
     */
    public record Item(
            String word,
            Message title,
            Message looked,
            String state,
            String way,
            boolean forOwner,
            List<Row> holding,
            List<Row> others) {
        public boolean keepsBack() {
            return !holding.isEmpty();
        }
    }

    public static PreflightView of(String path, CheckedLesson checked) {
        var asking = checked.asking();
        var blocking = checked.holding().stream()
                .filter(remark -> !asking.contains(remark))
                .toList();
        var others = checked.remarks().stream()
                .filter(remark -> !checked.holding().contains(remark))
                .filter(remark -> remark.point() != Checkpoint.RELEASE) // it is told by itself, of each room
                .toList();
        String accepting = asking.stream().map(LessonRemark::digest).distinct().collect(Collectors.joining(" "));
        var items = checked.items().stream().map(item -> item(path, item)).toList();
        return new PreflightView(rows(path, blocking), rows(path, asking), rows(path, others), accepting, items);
    }

    private static Item item(String path, CheckedItem item) {
        var point = item.point();
        var others = item.remarks().stream()
                .filter(remark -> !item.holding().contains(remark))
                .toList();
        return new Item(
                point.word(),
                point.title(),
                item.looked(),
                item.state().word(),
                way(path, point.field(), 0),
                OF_SITE.contains(point.field()),
                rows(path, item.holding()),
                rows(path, others));
    }

    private static List<Row> rows(String path, List<LessonRemark> remarks) {
        return remarks.stream()
                .map(remark -> new Row(remark.message(), remark.field(), way(path, remark.field(), remark.bar())))
                .toList();
    }

    private static String way(String path, String field, int bar) {
        return switch (field) {
            case "address" -> "/desk/settings#publicAddress";
            case "imprint" -> "/desk/who-teaches?lesson=" + path.substring(path.lastIndexOf('/') + 1);
            case "mail" -> "/desk/outbox";
            default -> path + Room.of(field).map(room -> spot(room, field, bar)).orElse(Room.PUBLISH.way());
        };
    }

    /** A page for each exercise; ids have no brackets, and what is a whole room needs none. A bar opens on the page of its line. */
    private static String spot(Room room, String field, int bar) {
        var exercise = EXERCISE.matcher(field);
        if (exercise.matches()) {
            int place = Integer.parseInt(exercise.group(1));
            return room.way() + "/" + (place + 1) + (bar > 0 ? "#bar-" + bar : "#exercises-" + place);
        }
        if (bar > 0) {
            return room.way() + "#bar-" + bar;
        }
        return field.equals(room.word()) && room != Room.NOTES ? room.way() : room.way() + "#" + field;
    }

    /** What keeps the lesson from going out, the gravest first. */
    List<Row> holding() {
        return Stream.concat(blocking.stream(), asking.stream()).toList();
    }

    public boolean isClear() {
        return blocking.isEmpty() && asking.isEmpty() && others.isEmpty();
    }
}
