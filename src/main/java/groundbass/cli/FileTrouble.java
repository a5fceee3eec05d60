package groundbass.cli;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.FileSystemException;
import java.nio.file.NoSuchFileException;
import java.util.Optional;

/** What an operator can do about a file that cannot be read or written: a folder that is not there, a disk that is full. */
final class FileTrouble {
    private FileTrouble() {}

    /** One sentence, where it is a file; empty for all other failures. */
    static Optional<String> advice(RuntimeException failure) {
        return failure instanceof UncheckedIOException e ? Optional.of(sentence(e.getCause())) : Optional.empty();
    }

    private static String sentence(IOException e) {
        if (e instanceof FileSystemException file && file.getFile() != null) {
            return "The file " + file.getFile() + " cannot be read or written: " + reason(file) + ".";
        }
        return "A file cannot be read or written: " + e.getMessage() + ".";
    }

    private static String reason(FileSystemException e) {
        if (e instanceof NoSuchFileException) {
            return "it, or its folder, is not there";
        }
        if (e instanceof AccessDeniedException) {
            return "this user may not do so";
        }
        if (e instanceof FileAlreadyExistsException) {
            return "it is there already";
        }
        return e.getReason() == null ? e.getClass().getSimpleName() : e.getReason();
    }
}
