package groundbass.audio;

import java.util.Objects;

/**
 * What a player shows of a file.
 *
 * @param title of this file
 * @param series what it is a part of
 * @param disc the lesson's place in the series, whose lessons are to a player what discs are to an album; 0 for none
 * @param track the file's place in it
 * @param by who made it; may be empty
 * @param rights may be empty
 * @param beats a minute
 * @param silence seconds before the first sound
 * @param cover a PNG picture, not copied; empty for none
 */
@SuppressWarnings("ArrayRecordComponent")
public record Tags(
        String title,
        String series,
        int disc,
        int track,
        String by,
        String rights,
        int beats,
        double silence,
        byte[] cover) {
    static final String PNG = "image/png";

    /** The name under which a file tells how many seconds of silence it begins with. */
    static final String SILENCE = "PREROLL_SECONDS";

    public Tags {
        Objects.requireNonNull(title);
        Objects.requireNonNull(series);
        Objects.requireNonNull(by);
        Objects.requireNonNull(rights);
        Objects.requireNonNull(cover);
    }

    String silenceText() {
        return Double.toString(silence);
    }
}
