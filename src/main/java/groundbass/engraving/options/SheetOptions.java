package groundbass.engraving.options;

import groundbass.score.Position;
import java.util.Optional;
import java.util.function.Function;

/**
 * How a line becomes a sheet.
 *
 * @param simile whether a bar that repeats the one before it is drawn as a repeat sign
 * @param restsTogether whether one sign stands for silent bars that follow one another
 * @param legend whether the signs used are explained under the music
 * @param aids what helps its reader
 * @param figures what stands under the notes that begin at a moment, such as {@code b7}; empty where nothing does
 */
public record SheetOptions(
        Paper paper,
        Staves staves,
        TechniqueLetters letters,
        SheetWords words,
        Header header,
        Footer footer,
        boolean simile,
        boolean restsTogether,
        boolean legend,
        Aids aids,
        Function<Position, String> figures) {
    /** No figures under the notes. */
    private static final Function<Position, String> NO_FIGURES = moment -> "";

    /** What stands over the music; empty texts are left out. */
    public record Header(String title, String series, String credit) {
        public static final Header NONE = new Header("", "", "");
    }

    /**
     * What stands under every page; empty texts are left out.
     *
     * @param rights whose the music is
     * @param release which release this is and of what date
     * @param way to where the episode lives; printed as text, as a link and as a QR code
     */
    public record Footer(String rights, String release, String cautions, Optional<QrCode> way) {
        public static final Footer NONE = new Footer("", "", "", Optional.empty());

        public Footer withRights(String newRights) {
            return new Footer(newRights, release, cautions, way);
        }
    }

    /** Both staves, written out, with a legend. */
    public static SheetOptions of(Paper paper, SheetWords words, Header header, Footer footer) {
        return new SheetOptions(
                paper,
                Staves.BOTH,
                TechniqueLetters.usual(),
                words,
                header,
                footer,
                false,
                false,
                true,
                Aids.NONE,
                NO_FIGURES);
    }

    public SheetOptions with(Staves newStaves) {
        return new SheetOptions(
                paper, newStaves, letters, words, header, footer, simile, restsTogether, legend, aids, figures);
    }

    public SheetOptions with(TechniqueLetters newLetters) {
        return new SheetOptions(
                paper, staves, newLetters, words, header, footer, simile, restsTogether, legend, aids, figures);
    }

    public SheetOptions withSimile(boolean newSimile) {
        return new SheetOptions(
                paper, staves, letters, words, header, footer, newSimile, restsTogether, legend, aids, figures);
    }

    public SheetOptions withRestsTogether(boolean newRestsTogether) {
        return new SheetOptions(
                paper, staves, letters, words, header, footer, simile, newRestsTogether, legend, aids, figures);
    }

    public SheetOptions withLegend(boolean newLegend) {
        return new SheetOptions(
                paper, staves, letters, words, header, footer, simile, restsTogether, newLegend, aids, figures);
    }

    public SheetOptions withFigures(Function<Position, String> newFigures) {
        return new SheetOptions(
                paper, staves, letters, words, header, footer, simile, restsTogether, legend, aids, newFigures);
    }

    public SheetOptions with(Paper newPaper) {
        return new SheetOptions(
                newPaper, staves, letters, words, header, footer, simile, restsTogether, legend, aids, figures);
    }

    public SheetOptions with(Aids newAids) {
        return new SheetOptions(
                paper, staves, letters, words, header, footer, simile, restsTogether, legend, newAids, figures);
    }
}
