package groundbass.web.desk.room;

import groundbass.publishing.LessonRemark;
import groundbass.publishing.Publisher.Verdict;
import groundbass.text.Message;
import java.util.List;
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
 */
public record PreflightView(List<Row> blocking, List<Row> asking, List<Row> others, String accepting) {
    private static final Pattern EXERCISE = Pattern.compile("exercises\\[(\\d{1,3})]");

    /**
     * A remark.
     *
     * @param field what it is about, as {@link groundbass.publishing.Remark} names it
     * @param way where it is mended
     */
    public record Row(Message message, String field, String way) {}

    public static PreflightView of(String path, Verdict verdict) {
        var asking = verdict.asking();
        var blocking = verdict.holding().stream()
                .filter(remark -> !asking.contains(remark))
                .toList();
        var others = verdict.remarks().stream()
                .filter(remark -> !verdict.holding().contains(remark))
                .toList();
        String accepting = asking.stream().map(LessonRemark::digest).distinct().collect(Collectors.joining(" "));
        return new PreflightView(rows(path, blocking), rows(path, asking), rows(path, others), accepting);
    }

    private static List<Row> rows(String path, List<LessonRemark> remarks) {
        return remarks.stream()
                .map(remark -> new Row(remark.message(), remark.field(), way(path, remark.field())))
                .toList();
    }

    private static String way(String path, String field) {
        return switch (field) {
            case "address" -> "/desk/settings#publicAddress";
            case "imprint" -> "/desk/who-teaches";
            default -> path + Room.of(field).map(room -> spot(room, field)).orElse(Room.PUBLISH.way());
        };
    }

    /** A page for each exercise; ids have no brackets, and what is a whole room needs none. */
    private static String spot(Room room, String field) {
        var exercise = EXERCISE.matcher(field);
        if (exercise.matches()) {
            int place = Integer.parseInt(exercise.group(1));
            return room.way() + "/" + (place + 1) + "#exercises-" + place;
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
