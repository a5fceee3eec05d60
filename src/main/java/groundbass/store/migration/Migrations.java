package groundbass.store.migration;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.net.JarURLConnection;
import java.net.URISyntaxException;
import java.net.URL;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import java.util.zip.CRC32;

/** The migrations of this program, read without the library that does them: it takes a second to start. */
public final class Migrations {
    public static final String FOLDER = "migrations";
    private static final Pattern NAME = Pattern.compile("V(\\d+)__(\\w+)\\.sql");

    private Migrations() {}

    /** One of them, as the library notes it in a database where it was done. */
    public record Migration(String version, String description, String script, int checksum) {}

    /** In their order. */
    public static List<Migration> all() {
        return scripts().stream()
                .map(NAME::matcher)
                .filter(Matcher::matches)
                .sorted(Comparator.comparing(name -> Integer.valueOf(name.group(1))))
                .map(name -> new Migration(
                        name.group(1), name.group(2).replace('_', ' '), name.group(), checksum(text(name.group()))))
                .toList();
    }

    /** The statements of one. */
    public static String text(String script) {
        try (InputStream in = Migrations.class.getResourceAsStream("/" + FOLDER + "/" + script)) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** The library's: the CRC32 of the lines without their ends, so that it is the same on every system. */
    private static int checksum(String text) {
        var crc = new CRC32();
        text.lines().forEach(line -> crc.update(line.getBytes(StandardCharsets.UTF_8)));
        return (int) crc.getValue();
    }

    private static List<String> scripts() {
        URL folder = Migrations.class.getResource("/" + FOLDER);
        try {
            return folder.openConnection() instanceof JarURLConnection jar ? inJar(jar) : inFolder(folder);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static List<String> inJar(JarURLConnection jar) throws IOException {
        String prefix = FOLDER + "/";
        return jar.getJarFile().stream()
                .filter(entry -> entry.getName().startsWith(prefix))
                .map(entry -> entry.getName().substring(prefix.length()))
                .toList();
    }

    private static List<String> inFolder(URL folder) throws IOException {
        try (Stream<Path> files = Files.list(Path.of(folder.toURI()))) {
            return files.map(file -> file.getFileName().toString()).toList();
        } catch (URISyntaxException e) {
            throw new IllegalStateException(e);
        }
    }
}
