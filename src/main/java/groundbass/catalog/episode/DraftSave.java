package groundbass.catalog.episode;

import groundbass.document.EpisodeDocument;
import java.util.Objects;

/** What became of saving a draft. */
public sealed interface DraftSave {
    /** It is saved, with its new version. */
    record Saved(Draft draft) implements DraftSave {
        public Saved {
            Objects.requireNonNull(draft);
        }
    }

    /**
     * Somebody saved in the meantime, in another window. Nothing was changed and nothing is lost: here are both texts.
     *
     * @param stored what is saved now
     * @param yours  what was to be saved
     */
    record Conflict(Draft stored, EpisodeDocument yours) implements DraftSave {
        public Conflict {
            Objects.requireNonNull(stored);
            Objects.requireNonNull(yours);
        }
    }
}
