package groundbass.fuzz;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;

/** Inputs that the tests have anyway. */
final class Examples {
    private Examples() {}

    /** All line texts of the demonstration. */
    static List<byte[]> lines() {
        return files(Path.of("seed-data"), ".line");
    }

    /** Every file below a folder whose name ends so. */
    static List<byte[]> files(Path folder, String ending) {
        try (var all = Files.walk(folder)) {
            var found = all.filter(file -> file.toString().endsWith(ending))
                    .sorted()
                    .toList();
            if (found.isEmpty()) {
                throw new IllegalStateException("nothing ends with " + ending + " in " + folder);
            }
            return found.stream().map(Examples::read).toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static byte[] read(Path file) {
        try {
            return Files.readAllBytes(file);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    static List<byte[]> texts(String... texts) {
        return List.of(texts).stream().map(text -> text.getBytes(UTF_8)).toList();
    }
}
