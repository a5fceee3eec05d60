package groundbass.store.fault;

import java.io.IOException;
import java.io.UncheckedIOException;

/** A folder of the site cannot be made, read or written. */
public final class FolderFault extends UncheckedIOException {
    private static final long serialVersionUID = 1L;

    public FolderFault(String message, IOException cause) {
        super(message, cause);
    }
}
