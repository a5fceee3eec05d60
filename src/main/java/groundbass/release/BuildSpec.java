package groundbass.release;

import groundbass.catalog.episode.RevisionId;
import groundbass.document.HouseStyle;
import groundbass.identity.Sha256;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.Objects;

/**
 * All that the files of a release depend on: the same build specification gives the same bytes.
 *
 * @param revision what is said
 * @param release the release's number, as the sheet shows it
 * @param series the title of the series, as printed
 * @param episodeNumber its place in the series
 * @param fileStem the name of the bundle without its ending: {@code low-tide-03-lantern-street}
 * @param episodeAddress where the episode will stay, for the QR code and the links
 * @param date of the revision, in the zone of the series
 * @param style how the series has its sheets
 * @param renderers the version of this program's renderers; it grows when they draw or sound differently
 */
public record BuildSpec(
        RevisionId revision,
        int release,
        String series,
        int episodeNumber,
        String fileStem,
        String episodeAddress,
        LocalDate date,
        HouseStyle style,
        int renderers) {
    /** Raise it whenever any renderer's output changes. */
    public static final int RENDERERS = 22;

    public BuildSpec {
        Objects.requireNonNull(revision);
        Objects.requireNonNull(series);
        Objects.requireNonNull(fileStem);
        Objects.requireNonNull(episodeAddress);
        Objects.requireNonNull(date);
        Objects.requireNonNull(style);
    }

    /** In the usual style. */
    public BuildSpec(
            RevisionId revision,
            int release,
            String series,
            int episodeNumber,
            String fileStem,
            String episodeAddress,
            LocalDate date,
            int renderers) {
        this(revision, release, series, episodeNumber, fileStem, episodeAddress, date, HouseStyle.USUAL, renderers);
    }

    /** A number that differs from one build specification to the next, for formats that want one. */
    long digest() {
        return Long.parseUnsignedLong(
                Sha256.of(BuildSpecJson.write(this).getBytes(StandardCharsets.UTF_8))
                        .hex()
                        .substring(0, 16),
                16);
    }

    public boolean has(Feature feature) {
        return feature.isIn(renderers);
    }

    /** Whether the other build specification makes the same files but for the release's number. */
    public boolean makesTheSameAs(BuildSpec that) {
        return equals(that.with(release, that.renderers));
    }

    /**
     * Whether a newer version of this program, on another server, has asked for the same but for number and renderers. This
     * one cannot make it, and what it would make instead would be older.
     */
    public boolean isNewerThan(BuildSpec that) {
        return renderers > that.renderers && equals(that.with(release, renderers));
    }

    /** Whether this program cannot make it, since a newer one asked for it. */
    public boolean isOfNewerProgram() {
        return renderers > RENDERERS;
    }

    /** Whether the other names the same place for the episode: series, number and address. Its title may be another. */
    public boolean isAtPlaceOf(BuildSpec that) {
        return series.equals(that.series)
                && episodeNumber == that.episodeNumber
                && episodeAddress.equals(that.episodeAddress);
    }

    private BuildSpec with(int number, int version) {
        return new BuildSpec(revision, number, series, episodeNumber, fileStem, episodeAddress, date, style, version);
    }
}
