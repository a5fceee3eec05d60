package groundbass.web.view;

import groundbass.form.FieldProblem;
import groundbass.text.Message;
import java.util.List;

/** All that is wrong with a form, in the order of its fields. */
public record FieldProblems(List<FieldProblem> all) {
    public static final FieldProblems NONE = new FieldProblems(List.of());

    public FieldProblems {
        all = List.copyOf(all);
    }

    public boolean isEmpty() {
        return all.isEmpty();
    }

    public boolean has(String field) {
        return all.stream().anyMatch(p -> p.field().equals(field));
    }

    public List<Message> of(String field) {
        return all.stream()
                .filter(p -> p.field().equals(field))
                .map(FieldProblems::message)
                .toList();
    }

    public static Message message(FieldProblem problem) {
        return new Message(problem.key(), problem.args());
    }

    /** The ids of the texts that explain a field, for {@code aria-describedby}; empty where there are none. */
    public String describing(String field, String hint) {
        String hintId = hint.isEmpty() ? "" : field + "-hint";
        String problemId = has(field) ? field + "-problem" : "";
        return (hintId + " " + problemId).strip();
    }

    /** Each with the way to its field, for the summary on top of a form. */
    public List<Entry> entries() {
        return all.stream().map(p -> new Entry(p.field(), message(p))).toList();
    }

    /** One line of the summary. */
    public record Entry(String field, Message message) {}
}
