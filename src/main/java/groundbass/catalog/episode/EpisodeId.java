package groundbass.catalog.episode;

import groundbass.identity.IdForm;
import groundbass.identity.TextValue;
import groundbass.store.RandomId;
import java.util.Optional;

/** The id of an episode; it is permanent, survives export and import, and stands in /e/{id}. */
public record EpisodeId(String value) implements TextValue {
    public EpisodeId {
        IdForm.require(value);
    }

    public static EpisodeId next() {
        return new EpisodeId(RandomId.next());
    }

    /** Reads text from outside; empty where it has not the form of an id. */
    public static Optional<EpisodeId> parse(String text) {
        return IdForm.isId(text) ? Optional.of(new EpisodeId(text)) : Optional.empty();
    }

    @Override
    public String toString() {
        return value;
    }
}
