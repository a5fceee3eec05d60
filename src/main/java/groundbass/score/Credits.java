package groundbass.score;

import java.util.Objects;

/**
 * Whose music it is and where it came from; each empty where nothing is said.
 *
 * @param composer who wrote the music
 * @param transcriber who wrote it down, and who else is thanked
 * @param rights the rights line
 * @param source the address of the lesson
 */
public record Credits(String title, String composer, String transcriber, String rights, String source) {
    public Credits {
        Objects.requireNonNull(title);
        Objects.requireNonNull(composer);
        Objects.requireNonNull(transcriber);
        Objects.requireNonNull(rights);
        Objects.requireNonNull(source);
    }

    /** What the line itself says. */
    public static Credits of(Header header) {
        return new Credits(header.title(), header.composer(), "", header.rights(), "");
    }

    /** These, and the other's where these say nothing. */
    public Credits or(Credits other) {
        return new Credits(
                or(title, other.title),
                or(composer, other.composer),
                or(transcriber, other.transcriber),
                or(rights, other.rights),
                or(source, other.source));
    }

    private static String or(String one, String other) {
        return one.isBlank() ? other : one;
    }
}
