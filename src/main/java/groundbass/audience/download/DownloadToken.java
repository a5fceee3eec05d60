package groundbass.audience.download;

import groundbass.audience.student.SignedId;
import java.util.Optional;
import org.jdbi.v3.core.Jdbi;

/** Signs the id of a download, so that the ranges that a client asks for one after another are known to belong together. */
public final class DownloadToken {
    private static final String SETTING = "secret.download-token";

    private final SignedId ids;

    public DownloadToken(byte[] key) {
        this(new SignedId(key));
    }

    private DownloadToken(SignedId ids) {
        this.ids = ids;
    }

    /** With the key of this site, made on the first call. */
    public static DownloadToken of(Jdbi jdbi) {
        return new DownloadToken(SignedId.of(jdbi, SETTING));
    }

    public String sign(DownloadId id) {
        return ids.sign(id.value());
    }

    /** The id, if this key signed it; anything else a client may send is nothing. */
    public Optional<DownloadId> verify(String token) {
        return ids.verify(token).flatMap(DownloadId::parse);
    }
}
