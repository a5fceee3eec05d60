package groundbass.store;

import groundbass.identity.Sha256;
import java.util.Locale;
import org.jdbi.v3.core.Jdbi;
import org.jdbi.v3.core.spi.JdbiPlugin;

/**
 * What jdbi is told once of our values, so that no statement binds or reads one in a way of its own: instants, every
 * {@link groundbass.identity.TextValue}, and records as rows. Found as a service, like the plugins of other rooms.
 */
public final class StoredValues implements JdbiPlugin {
    @Override
    public void customizeJdbi(Jdbi jdbi) {
        var values = new TextValueColumns();
        var instants = new InstantColumn();
        jdbi.registerArgument(values).registerColumnMapper(values);
        jdbi.registerArgument(instants).registerColumnMapper(instants);
        TextColumn.register(jdbi, Sha256.class, Sha256::hex, Sha256::new);
        TextColumn.register(jdbi, Locale.class, Locale::toLanguageTag, Locale::forLanguageTag);
        jdbi.registerRowMapper(new RecordRows());
    }
}
