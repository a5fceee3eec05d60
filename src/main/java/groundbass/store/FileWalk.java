package groundbass.store;

import groundbass.identity.Sha256;
import java.io.IOException;
import java.nio.file.DirectoryStream;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Lists the files of a {@link BlobFolder}. What comes or goes meanwhile may or may not be listed. */
final class FileWalk {
    private FileWalk() {}

    /** Calls for each file that has its name; whatever else lies about in the folder is not ours. */
    interface Visitor {
        /** @return whether to go on */
        boolean visit(Path file, Sha256 sha256) throws IOException;
    }

    static void blobs(Path folder, Visitor visitor) throws IOException {
        for (Path shelf : list(folder, "[0-9a-f][0-9a-f]")) {
            for (Path file : Files.isDirectory(shelf) ? list(shelf, "*") : List.<Path>of()) {
                Optional<Sha256> sha256 = Sha256.parse(file.getFileName().toString());
                if (sha256.isPresent() && Files.isRegularFile(file) && !visitor.visit(file, sha256.get())) {
                    return;
                }
            }
        }
    }

    /** Everything in a folder; nothing where there is no such folder. */
    static List<Path> list(Path folder, String glob) throws IOException {
        var all = new ArrayList<Path>();
        try (DirectoryStream<Path> stream = Files.newDirectoryStream(folder, glob)) {
            stream.forEach(all::add);
        } catch (NoSuchFileException e) {
            return List.of();
        }
        return all;
    }
}
