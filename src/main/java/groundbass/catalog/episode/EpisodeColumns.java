package groundbass.catalog.episode;

import groundbass.document.EpisodeDocument;
import groundbass.document.Level;
import groundbass.store.TextColumn;
import org.jdbi.v3.core.Jdbi;
import org.jdbi.v3.core.spi.JdbiPlugin;

/** How documents and levels lie in a column. */
public final class EpisodeColumns implements JdbiPlugin {
    @Override
    public void customizeJdbi(Jdbi jdbi) {
        TextColumn.register(jdbi, EpisodeDocument.class, DocumentJson::write, DocumentJson::read);
        TextColumn.register(jdbi, Level.class, Level::code, EpisodeColumns::level);
    }

    private static Level level(String code) {
        return Level.parse(code).orElseThrow(() -> new IllegalArgumentException("unknown level: " + code));
    }
}
