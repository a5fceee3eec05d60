package groundbass.store;

import java.nio.file.FileSystemException;
import java.nio.file.Path;

/**
 * The folder of files is not where it was: its disk is not mounted, say. Nothing in it is missing for that, and nothing
 * must be made again; it comes back with its disk.
 */
public final class FilesAway extends FileSystemException {
    private static final long serialVersionUID = 1L;

    FilesAway(Path folder) {
        super(
                folder.toString(),
                null,
                "the folder of files is not the one that this site was started with; is its disk mounted?");
    }
}
