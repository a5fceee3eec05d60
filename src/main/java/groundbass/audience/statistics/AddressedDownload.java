package groundbass.audience.statistics;

import groundbass.audience.download.Download;
import groundbass.post.EmailAddress;
import java.util.Optional;
import org.jdbi.v3.core.mapper.Nested;
import org.jdbi.v3.core.mapper.reflect.ColumnName;

/** A download beside the address of the student who made it, if known. */
public record AddressedDownload(
        @ColumnName("email") Optional<EmailAddress> student,
        @Nested Download download) {}
