package groundbass.store.fault;

import java.nio.file.FileSystemException;
import java.nio.file.Path;

/**
 * The place that keeps the files cannot be used for now: its disk is not mounted, say, or an object store does not answer.
 * Nothing in it is missing for that, and nothing must be made again.
 */
public final class FilesAway extends FileSystemException {
    private static final long serialVersionUID = 1L;

    public FilesAway(Path folder) {
        this(
                folder.toString(),
                "the folder of files is not the one that this site was started with; is its disk mounted?");
    }

    /** @param place where they should be */
    public FilesAway(String place, String why) {
        super(place, null, why);
    }
}
