package groundbass.web.desk.calendar;

import groundbass.publishing.LessonRemark;
import groundbass.publishing.Publisher.Verdict;
import groundbass.text.Message;
import java.util.List;
import java.util.stream.Collectors;

/**
 * What is to be said of a lesson before it goes out, each with the way to where it is mended.
 *
 * @param blocking what keeps it from going out until it is mended
 * @param asking what keeps it until the educator accepts it
 * @param others what is only told, and what was accepted
 * @param accepting the asking ones, as the form sends them when they are accepted
 */
public record PreflightView(List<Row> blocking, List<Row> asking, List<Row> others, String accepting) {
    static final PreflightView NONE = new PreflightView(List.of(), List.of(), List.of(), "");

    /**
     * A remark.
     *
     * @param field what it is about, as {@link groundbass.publishing.Remark} names it
     * @param way where it is mended
     */
    public record Row(Message message, String field, String way) {}

    static PreflightView of(String path, Verdict verdict) {
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
            case "walkthrough" -> path + "/walkthrough";
            default -> path + (field.startsWith("facts.") ? "/facts#" + field : "#" + spot(field));
        };
    }

    public boolean isClear() {
        return blocking.isEmpty() && asking.isEmpty() && others.isEmpty();
    }

    /** The id of a document's field in its page: ids there have no brackets. */
    public static String spot(String field) {
        return field.replaceFirst("^exercises\\[(\\d+)]$", "exercises-$1");
    }
}
