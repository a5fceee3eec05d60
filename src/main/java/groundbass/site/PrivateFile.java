package groundbass.site;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.channels.Channels;
import java.nio.channels.FileChannel;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.PosixFilePermissions;

/** Files that only their owner may read, where the system knows owners. */
final class PrivateFile {
    private PrivateFile() {}

    /** Something that writes a file from beginning to end, and tells what it wrote. */
    @FunctionalInterface
    interface Content<T> {
        T writeTo(OutputStream out) throws IOException;
    }

    /**
     * Writes a file that has its name only once it is whole.
     *
     * @throws FileAlreadyExistsException where there is such a file
     */
    static <T> T write(Path file, Content<T> content) throws IOException {
        if (Files.exists(file)) {
            throw new FileAlreadyExistsException(file.toString());
        }
        Path unfinished = file.resolveSibling(file.getFileName() + ".unfinished");
        Files.deleteIfExists(unfinished);
        create(unfinished);
        try {
            T told;
            try (var channel = FileChannel.open(unfinished, StandardOpenOption.WRITE)) {
                var out = Channels.newOutputStream(channel);
                told = content.writeTo(out);
                channel.force(true); // on the disk before it has its name
            }
            Files.move(unfinished, file, StandardCopyOption.ATOMIC_MOVE);
            return told;
        } finally {
            Files.deleteIfExists(unfinished);
        }
    }

    private static void create(Path file) throws IOException {
        if (file.getFileSystem().supportedFileAttributeViews().contains("posix")) {
            Files.createFile(file, PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString("rw-------")));
        } else {
            Files.createFile(file);
        }
    }
}
