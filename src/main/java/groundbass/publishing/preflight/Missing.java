package groundbass.publishing.preflight;

import groundbass.document.PictureId;
import groundbass.document.UploadId;
import java.util.Set;

/** What a document names and the site does not have, or has no more: it was taken out, or sent to another site. */
public record Missing(Set<PictureId> pictures, Set<UploadId> recordings) {
    public static final Missing NOTHING = new Missing(Set.of(), Set.of());

    public Missing {
        pictures = Set.copyOf(pictures);
        recordings = Set.copyOf(recordings);
    }
}
