package groundbass.archive.file;

import java.util.Comparator;
import java.util.regex.Pattern;

/** What the files of an archive are called. */
public final class ArchiveNames {
    public static final String MANIFEST = "manifest.json";
    public static final String READ_ME = "read-me.txt";
    public static final String SERIES = "series.properties";
    public static final String BEGINNING = "beginning/";

    /** In the folder of a lesson: what only a program needs to know of it, and the digests of its other files. */
    public static final String LESSON = "episode.json";

    private static final Pattern FOLDER = Pattern.compile("([0-9]{1,4})-.+");
    private static final Pattern SAFE =
            Pattern.compile("[A-Za-z0-9][A-Za-z0-9._-]{0,199}(/[A-Za-z0-9][A-Za-z0-9._-]{0,199}){0,4}");

    private ArchiveNames() {}

    /** Whether a name from outside has the form of those that archives use; all others are passed over. */
    static boolean isOurs(String name) {
        return SAFE.matcher(name).matches();
    }

    /** The number that a lesson's folder begins with, as in {@code 03-slow-tide}; 0 where it has none. */
    public static int number(String folder) {
        var numbered = FOLDER.matcher(folder);
        return numbered.matches() ? Integer.parseInt(numbered.group(1)) : 0;
    }

    /** By number, then by name. */
    public static final Comparator<String> BY_NUMBER =
            Comparator.comparingInt(ArchiveNames::number).thenComparing(Comparator.naturalOrder());
}
