package groundbass.release;

import groundbass.store.TextColumn;
import org.jdbi.v3.core.Jdbi;
import org.jdbi.v3.core.spi.JdbiPlugin;

/** How a build specification lies in a column. */
public final class ReleaseColumns implements JdbiPlugin {
    @Override
    public void customizeJdbi(Jdbi jdbi) {
        TextColumn.register(jdbi, BuildSpec.class, BuildSpecJson::write, BuildSpecJson::read);
    }
}
