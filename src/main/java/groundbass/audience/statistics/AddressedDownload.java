package groundbass.audience.statistics;

import groundbass.audience.download.Download;
import groundbass.post.EmailAddress;
import java.util.Optional;

/** A download beside the address of the student who made it, if known. */
public record AddressedDownload(Optional<EmailAddress> student, Download download) {}
