package groundbass.web.view;

import groundbass.text.Message;
import java.util.List;

/** All that is wrong with a form, in the order of its fields. */
public record Problems(List<FieldProblem> all) {
    public static final Problems NONE = new Problems(List.of());

    public Problems {
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
                .map(FieldProblem::message)
                .toList();
    }
}
