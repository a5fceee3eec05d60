package groundbass.archive.file;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What is read of a zip whose end is missing. */
class SalvageTest {
    private static final int MANY = 100;

    @TempDir
    Path folder;

    /** Files whose content is their name's first letter, three times, in a zip without its list of files. */
    private Path broken(String... names) throws IOException {
        var bytes = new ByteArrayOutputStream();
        int end;
        try (var zip = new ZipOutputStream(bytes)) {
            for (String name : names) {
                zip.putNextEntry(new ZipEntry(name));
                zip.write(name.substring(0, 1).repeat(3).getBytes(StandardCharsets.UTF_8));
                zip.closeEntry();
            }
            zip.flush();
            end = bytes.size();
        }
        return Files.write(folder.resolve("broken.zip"), Arrays.copyOf(bytes.toByteArray(), end));
    }

    private static String text(Salvage salvage, String name) throws IOException {
        try (var in = salvage.open(name)) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        }
    }

    /** A local header of a zip says the name without a checksum of it, so another one of its length may stand there. */
    @Test
    void aNameThatOccursTwiceSharesItsFileWithNoOther() throws IOException {
        Path zip = broken("a.txt", "b.txt", "c.txt");
        String renamed = Files.readString(zip, StandardCharsets.ISO_8859_1).replace("b.txt", "a.txt");
        Files.writeString(zip, renamed, StandardCharsets.ISO_8859_1);
        try (var salvage = new Salvage(zip)) {
            assertThat(salvage.names()).containsExactly("a.txt", "c.txt");
            assertThat(text(salvage, "a.txt")).isEqualTo("bbb");
            assertThat(text(salvage, "c.txt")).isEqualTo("ccc");
            assertThat(salvage.isCut()).isFalse();
        }
    }

    @Test
    void whereThereIsMoreThanIsTakenThatIsTold() throws IOException {
        Path zip = broken("a.txt", "b.txt");
        try (var few = new Salvage(zip, MANY, 1);
                var all = new Salvage(zip, 6, 2);
                var small = new Salvage(zip, 5, 2)) {
            assertThat(few.names()).containsExactly("a.txt");
            assertThat(few.isCut()).isTrue();
            assertThat(all.names()).containsExactly("a.txt", "b.txt");
            assertThat(all.isCut()).isFalse();
            assertThat(small.names()).containsExactly("a.txt");
            assertThat(small.isCut()).isTrue();
        }
    }

    @Test
    void whatIsPassedOverCountsToo() throws IOException {
        Path zip = broken(".hidden", "a.txt");
        try (var enough = new Salvage(zip, 6, 2);
                var small = new Salvage(zip, 5, 2)) {
            assertThat(enough.names()).containsExactly("a.txt");
            assertThat(enough.passedOver()).isEqualTo(1);
            assertThat(small.isEmpty()).isTrue();
            assertThat(small.isCut()).isTrue();
        }
    }

    @Test
    void whereTheFirstFileBrokeOffThereIsNone() throws IOException {
        Path zip = broken("a.txt");
        Files.write(zip, Arrays.copyOf(Files.readAllBytes(zip), 36));
        try (var salvage = new Salvage(zip)) {
            assertThat(salvage.isEmpty()).isTrue();
        }
    }
}
