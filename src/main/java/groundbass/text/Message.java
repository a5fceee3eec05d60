package groundbass.text;

import java.util.List;
import java.util.Objects;

/** Something to be said, before its language is known: a key of the bundles and what fills its places. */
public record Message(String key, List<Object> args) {
    public Message {
        Objects.requireNonNull(key);
        args = List.copyOf(args);
    }

    public static Message of(String key, Object... args) {
        return new Message(key, List.of(args));
    }
}
