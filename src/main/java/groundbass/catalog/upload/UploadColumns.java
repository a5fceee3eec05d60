package groundbass.catalog.upload;

import groundbass.audio.AudioFacts;
import groundbass.store.TextColumn;
import org.jdbi.v3.core.Jdbi;
import org.jdbi.v3.core.spi.JdbiPlugin;

/** How the facts of a recording, and what was heard in it, lie in a column. */
public final class UploadColumns implements JdbiPlugin {
    @Override
    public void customizeJdbi(Jdbi jdbi) {
        TextColumn.register(jdbi, AudioFacts.class, FactsJson::write, FactsJson::read);
        TextColumn.register(jdbi, Heard.class, HeardJson::write, HeardJson::read);
    }
}
