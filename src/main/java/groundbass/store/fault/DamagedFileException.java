package groundbass.store.fault;

import groundbass.identity.Sha256;
import java.io.IOException;

/**
 * A stored file is no longer what its digest says. It has been put aside and counts as missing from now on; but where this
 * process may move nothing, it lies where it lay.
 */
public final class DamagedFileException extends IOException {
    private static final long serialVersionUID = 1L;

    public DamagedFileException(Sha256 sha256) {
        super("the stored file " + sha256 + " is damaged");
    }
}
