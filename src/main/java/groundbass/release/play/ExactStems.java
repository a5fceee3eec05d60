package groundbass.release.play;

import groundbass.store.Blob;
import java.util.Optional;
import java.util.regex.Pattern;

/**
 * The stems of a line at one tempo without loss, by the names of their files: {@code line-80-exact.json}, which names
 * {@code line-80-bass-0123456789ab.flac} and the others; written and read here only.
 *
 * @param line 0 for the main line, else the exercise's number
 */
public record ExactStems(int line, int percent) {
    private static final Pattern NAME = Pattern.compile(
            "(?:line|exercise-([1-9][0-9]?))-([1-9][0-9]{1,2})-" + "(?:exact\\.json|[a-z]+-[0-9a-f]{12}\\.flac)");
    private static final String FLAC = ".flac";
    private static final int DIGITS = 12;

    public static String manifest(String line, int percent) {
        return line + "-" + percent + "-exact.json";
    }

    /** @param name as it is without its content: {@code line-80-bass.flac} */
    public static String named(String name, Blob content) {
        return name.replace(FLAC, "-" + content.sha256().hex().substring(0, DIGITS) + FLAC);
    }

    /** To what a file of this name belongs; empty where nothing without loss is called so. */
    public static Optional<ExactStems> of(String name) {
        var parts = NAME.matcher(name);
        if (!parts.matches()) {
            return Optional.empty();
        }
        int line = parts.group(1) == null ? 0 : Integer.parseInt(parts.group(1));
        return Optional.of(new ExactStems(line, Integer.parseInt(parts.group(2))));
    }
}
