package groundbass.web.view;

import groundbass.text.Message;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * What the page says that refuses something for a while.
 *
 * @param howLong the wait, in words
 * @param path where to ask again
 * @param form whether something was sent, which is then sent again
 * @param typed what was typed; none of it is lost
 * @param secrets names of fields that are never sent back to a page, so that they are typed once more
 */
public record WaitView(
        int status,
        Message title,
        Message detail,
        Message howLong,
        long seconds,
        String path,
        boolean form,
        List<Field> typed,
        List<String> secrets) {
    private static final int LONGEST_IN_SECONDS = 90;
    private static final int A_MINUTE = 60;

    /** A field of the form that was sent. */
    public record Field(String name, String value) {}

    public WaitView {
        Objects.requireNonNull(title);
        Objects.requireNonNull(detail);
        Objects.requireNonNull(howLong);
        typed = List.copyOf(typed);
        secrets = List.copyOf(secrets);
    }

    public static WaitView of(
            int status, long seconds, String path, boolean form, List<Field> typed, List<String> secrets) {
        var said = ErrorView.of(status, Optional.empty());
        return new WaitView(status, said.title(), said.detail(), words(seconds), seconds, path, form, typed, secrets);
    }

    /** How long, as one says it. */
    public static Message words(long seconds) {
        return seconds <= LONGEST_IN_SECONDS
                ? Message.of("wait.seconds", seconds)
                : Message.of("wait.minutes", (seconds + A_MINUTE - 1) / A_MINUTE);
    }

    /** Whether nothing is left for the reader to do, so that a script may ask again by itself. */
    public boolean byItself() {
        return secrets.isEmpty();
    }
}
