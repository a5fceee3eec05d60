package groundbass.kill;

import java.util.Optional;
import java.util.regex.Pattern;

/** One line of a {@link Victim}: what it was done with and may tell its user. */
record Acknowledged(Kind kind, String key) {
    /** The stop at its end shows that a line is whole: the last one may be cut by the kill. */
    private static final Pattern LINE = Pattern.compile("([A-Z]+) (\\S+) \\.");

    static Optional<Acknowledged> read(String line) {
        var match = LINE.matcher(line);
        return match.matches()
                ? Optional.of(new Acknowledged(Kind.valueOf(match.group(1)), match.group(2)))
                : Optional.empty();
    }

    String line() {
        return kind + " " + key + " .";
    }

    /** The part of a draft's key that names its episode. */
    String episode() {
        return key.substring(0, key.indexOf('/'));
    }

    /** The part of a draft's key that counts its versions. */
    int version() {
        return Integer.parseInt(key.substring(key.indexOf('/') + 1));
    }
}
