package groundbass.publishing.preflight;

import groundbass.catalog.settings.Imprint;
import java.time.LocalDate;
import java.util.Optional;

/**
 * What is looked at beside the document of a lesson. Each is empty where it is not asked.
 *
 * @param imprint who teaches here
 * @param mail how the news of it will go out
 * @param difference in what the draft differs from what readers see or will see; also empty where it does not
 * @param day on which it goes out, as far as one knows, on the clocks of its series
 * @param links what came of trying the pages to which the lesson links; empty where the site tries none
 * @param missing what it names and is not there
 */
public record Around(
        Optional<Imprint> imprint,
        Optional<MailOutlook> mail,
        Optional<Difference> difference,
        Optional<LocalDate> day,
        Optional<TriedLinks> links,
        Missing missing) {
    static final Around NOTHING = new Around(
            Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(), Missing.NOTHING);

    /** For whoever asks of a document alone. */
    public static Around without(Missing missing) {
        return new Around(
                Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(), missing);
    }

    /** For whoever asks whether it may go out, and not how all else stands. */
    public static Around site(Imprint imprint, Missing missing) {
        return new Around(
                Optional.of(imprint), Optional.empty(), Optional.empty(), Optional.empty(), Optional.empty(), missing);
    }
}
