package groundbass.release;

import groundbass.identity.Sha256;
import groundbass.store.Blob;
import java.util.Objects;
import java.util.OptionalInt;
import java.util.regex.Pattern;

/**
 * A file of a release.
 *
 * @param name unique in its release; letters of ASCII, digits, hyphens, underscores and dots, up to 200
 * @param size in bytes
 */
public record ReleaseFile(String name, FileRole role, String mediaType, long size, Sha256 sha256) {
    /** What stands beside a link to the lesson. */
    public static final String LINK_PICTURE = "link.png";

    /** What stands for the lesson in lists, in the ink for light pages and in that for dark ones. */
    public static final String CARD_PICTURE = "card.png";

    public static final String CARD_PICTURE_AT_NIGHT = "card-night.png";

    private static final String FROM_BAR_1 = ".from-bar-1.mid";

    private static final Pattern NAME = Pattern.compile("[A-Za-z0-9][A-Za-z0-9._-]{0,199}");
    private static final Pattern EXERCISE = Pattern.compile("exercise-([0-9]{1,3})\\..+");

    public ReleaseFile {
        Objects.requireNonNull(role);
        Objects.requireNonNull(mediaType);
        Objects.requireNonNull(sha256);
        if (!NAME.matcher(name).matches()) {
            throw new IllegalArgumentException("not a file name: " + name);
        }
        if (size < 0) {
            throw new IllegalArgumentException("a size is not negative: " + size);
        }
    }

    static ReleaseFile of(String name, FileRole role, String mediaType, Blob blob) {
        return new ReleaseFile(name, role, mediaType, blob.length(), blob.sha256());
    }

    /** Which exercise it belongs to, counted from 1; empty for a file of the main line or of the whole lesson. */
    public OptionalInt exercise() {
        var ofExercise = EXERCISE.matcher(name);
        return ofExercise.matches() ? OptionalInt.of(Integer.parseInt(ofExercise.group(1))) : OptionalInt.empty();
    }

    /** By which words tell it from other files: its role, and whether a MIDI file is without count-in. */
    public String form() {
        return role.value() + (name.endsWith(FROM_BAR_1) ? "_from_bar_1" : "");
    }

    /** What a line's MIDI file without count-in is called. */
    static String fromBar1(String stem) {
        return stem + FROM_BAR_1;
    }

    /** How the names of an exercise's files begin. */
    static String exerciseStem(int number) {
        return "exercise-" + number;
    }
}
