package groundbass.store.temporary;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.FileTime;
import java.time.Duration;
import java.time.Instant;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class TemporaryFolderTest {
    private static final Duration LONG = Duration.ofDays(2);

    /** Another process, which makes its folder, says where, and waits. */
    static final class Neighbour {
        private Neighbour() {}

        public static void main(String[] args) throws IOException {
            var folder = TemporaryFolder.in(Path.of(args[0]));
            for (int i = 0; i < 5; i++) {
                System.gc(); // closes a file that nothing refers to
            }
            System.out.println(folder.path());
            System.in.read();
            if (!folder.isHeld()) {
                throw new IllegalStateException("the lock is gone");
            }
        }
    }

    @Test
    void whatAProcessLeavesThatIsKilledGoesAndWhatOneHasThatLivesStays(@TempDir Path all) throws Exception {
        var process = new ProcessBuilder(
                        Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                        "-cp",
                        System.getProperty("java.class.path"),
                        Neighbour.class.getName(),
                        all.toString())
                .redirectError(ProcessBuilder.Redirect.INHERIT)
                .start();
        try (var said = process.inputReader()) {
            var folder = Path.of(said.readLine());
            Files.createDirectories(folder.resolve("of/many"));
            Files.writeString(folder.resolve("of/many/bytes"), "a");
            age(folder.resolve("held"));
            TemporaryFolder.in(all);
            assertThat(folder.resolve("of/many/bytes")).exists();
            process.destroyForcibly().waitFor();
            TemporaryFolder.in(all);
            assertThat(folder).doesNotExist();
        } finally {
            process.destroyForcibly();
        }
    }

    @Test
    void whatIsNobodysOrQuiteNewStays(@TempDir Path all) throws IOException {
        var others = Files.createDirectory(all.resolve("groundbass-notes"));
        var fresh = Files.createDirectory(all.resolve("groundbass-1"));
        var elsewhere = Files.writeString(all.resolve("elsewhere"), "a");
        var linked = Files.createDirectory(all.resolve("groundbass-2"));
        Files.createFile(fresh.resolve("held"));
        age(elsewhere);
        Files.createSymbolicLink(linked.resolve("held"), elsewhere);
        TemporaryFolder.in(all);
        assertThat(others).exists();
        assertThat(fresh).exists();
        assertThat(linked).exists();
    }

    /** As by a service of the system that deletes what lay there long. */
    @Test
    void aFolderThatIsTidiedAwayIsMadeAnew(@TempDir Path all) throws IOException {
        var folder = TemporaryFolder.standing(null, all);
        assertThat(TemporaryFolder.standing(folder, all)).isSameAs(folder);
        Files.delete(folder.path().resolve("held"));
        Files.delete(folder.path());
        var anew = TemporaryFolder.standing(folder, all);
        assertThat(anew.path()).isDirectory();
        assertThat(anew.isHeld()).isTrue();
    }

    /** As after a program that was interrupted with work in hand. */
    @Test
    void whatLiesInAFolderWhoseProcessEndedGoesAsWell(@TempDir Path all) throws IOException {
        var left = Files.createDirectories(all.resolve("groundbass-3"));
        Files.writeString(left.resolve("copy"), "a");
        age(Files.createFile(left.resolve("held")));
        TemporaryFolder.in(all);
        assertThat(left).doesNotExist();
    }

    private static void age(Path file) throws IOException {
        Files.setLastModifiedTime(file, FileTime.from(Instant.now().minus(LONG)));
    }
}
