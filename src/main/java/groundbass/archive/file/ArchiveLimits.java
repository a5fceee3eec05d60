package groundbass.archive.file;

/**
 * What is taken of an archive at most.
 *
 * @param bytes of all its files together, unpacked
 * @param lessons of a series
 * @param filesOfALesson its texts, sounds and pages, of all its revisions and releases
 */
public record ArchiveLimits(long bytes, int lessons, int filesOfALesson) {
    /** Two hundred lessons with all that may belong to them stay below. */
    public static final ArchiveLimits USUAL = new ArchiveLimits(200_000_000_000L, 9_999, 20_000);

    /** The most bytes of a text. The longest that goes out has 200,000 characters. */
    public static final int LONGEST_TEXT = 1 << 22;

    /** The most bytes of all texts of a lesson together, with those of its revisions. */
    public static final long TEXTS_OF_A_LESSON = 1 << 26;

    /** Stored files are as small as they get; a zip that unpacks to much more than itself was made to do harm. */
    public static final int MOST_UNPACKED = 200;
}
