package groundbass.publishing.preflight;

import groundbass.catalog.settings.Imprint;
import groundbass.document.PictureId;
import java.time.LocalDate;
import java.util.Optional;
import java.util.function.Predicate;

/**
 * What is looked at beside the document of a lesson. Each is empty where it is not asked.
 *
 * @param imprint who teaches here
 * @param mail how the news of it will go out
 * @param difference in what the draft differs from what readers see or will see; also empty where it does not
 * @param day on which it goes out, as far as one knows, on the clocks of its series
 * @param links what came of trying the pages to which the lesson links; empty where the site tries none
 * @param pictures whether a picture is there
 */
public record Around(
        Optional<Imprint> imprint,
        Optional<MailOutlook> mail,
        Optional<Difference> difference,
        Optional<LocalDate> day,
        Optional<TriedLinks> links,
        Predicate<PictureId> pictures) {
    static final Around NOTHING = new Around(
            Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(), picture -> true);

    /** For whoever asks of a document alone. */
    public static Around pictures(Predicate<PictureId> pictures) {
        return new Around(
                Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(), pictures);
    }

    /** For whoever asks whether it may go out, and not how all else stands. */
    public static Around site(Imprint imprint, Predicate<PictureId> pictures) {
        return new Around(
                Optional.of(imprint), Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(), pictures);
    }
}
