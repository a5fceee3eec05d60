package groundbass.web.program;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;

/** The members of a JSON object, in their order; what is not there has none. */
final class Members {
    private final Map<String, Object> members = new LinkedHashMap<>();

    private Members() {}

    static Members of(String name, Object value) {
        return new Members().and(name, value);
    }

    Members and(String name, Object value) {
        members.put(name, value);
        return this;
    }

    Members and(String name, Optional<?> value) {
        value.ifPresent(known -> members.put(name, known));
        return this;
    }

    Map<String, Object> map() {
        return members;
    }
}
