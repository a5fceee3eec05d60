package groundbass.publishing.preflight;

import groundbass.catalog.settings.Imprint;
import java.util.Optional;

/**
 * What is looked at beside the document of a lesson. Each is empty where it is not asked.
 *
 * @param imprint who teaches here
 * @param mail how the news of it will go out
 * @param difference in what the draft differs from what readers see or will see; also empty where it does not
 */
public record Around(Optional<Imprint> imprint, Optional<MailOutlook> mail, Optional<Difference> difference) {
    static final Around NOTHING = new Around(Optional.empty(), Optional.empty(), Optional.empty());

    /** For whoever asks whether it may go out, and not how all else stands. */
    public static Around site(Imprint imprint) {
        return new Around(Optional.of(imprint), Optional.empty(), Optional.empty());
    }
}
