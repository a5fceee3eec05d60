package groundbass.audience.download;

import groundbass.store.TextColumn;
import org.jdbi.v3.core.Jdbi;
import org.jdbi.v3.core.spi.JdbiPlugin;

/** How it lies in a column which bytes were sent. */
public final class DownloadColumns implements JdbiPlugin {
    @Override
    public void customizeJdbi(Jdbi jdbi) {
        TextColumn.register(jdbi, Coverage.class, Coverage::toString, Coverage::parse);
    }
}
