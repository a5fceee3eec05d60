package groundbass.release;

import groundbass.release.PracticeTrack.Sounding;
import java.util.Optional;
import java.util.regex.Pattern;

/**
 * A practice track that somebody asks for by the name of its file, such as {@code without-bass-85.mp3} or
 * {@code exercise-2-full-60.flac}. Those of the main line are called as a {@link PracticeTrack} is.
 *
 * @param line 0 for the main line, else the exercise's number
 * @param lossless FLAC rather than MP3
 */
public record WantedTrack(int line, Sounding sounding, int percent, boolean lossless) {
    /** Percent of the line's tempo. */
    public static final int SLOWEST = 40;

    public static final int FASTEST = 130;

    private static final Pattern NAME =
            Pattern.compile("(?:exercise-([1-9][0-9]?)-)?([a-z-]+)-([1-9][0-9]{1,2})\\.(mp3|flac)");

    public WantedTrack {
        if (line < 0 || percent < SLOWEST || percent > FASTEST) {
            throw new IllegalArgumentException("no track of line " + line + " at " + percent);
        }
    }

    /** Empty where nobody can have such a track. */
    public static Optional<WantedTrack> named(String name) {
        var parts = NAME.matcher(name);
        if (!parts.matches()) {
            return Optional.empty();
        }
        int line = parts.group(1) == null ? 0 : Integer.parseInt(parts.group(1));
        int percent = Integer.parseInt(parts.group(3));
        return Sounding.of(parts.group(2))
                .filter(sounding -> percent >= SLOWEST && percent <= FASTEST)
                .map(sounding ->
                        new WantedTrack(line, sounding, percent, parts.group(4).equals("flac")));
    }

    public String name() {
        String of = line == 0 ? "" : ReleaseFile.exerciseStem(line) + "-";
        return of + new PracticeTrack(sounding, percent).fileName(lossless ? "flac" : "mp3");
    }
}
