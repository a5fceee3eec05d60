package groundbass;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.File;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;
import org.junit.jupiter.api.Assumptions;

/**
 * Programs of the distribution that give a second opinion, looked for on the search path. Where one is missing a test is
 * skipped and says so; on a build machine, which sets {@code CI} to anything but nothing, {@code 0} and {@code false}, it
 * fails.
 *
 * @param searchPath folders as {@code PATH} has them
 * @param ci what the variable {@code CI} says; empty where it is not set
 */
public record OutsideTools(String searchPath, String ci) {
    /** Those of this machine. */
    public static OutsideTools here() {
        return new OutsideTools(variable("PATH"), variable("CI"));
    }

    private static String variable(String name) {
        return Optional.ofNullable(System.getenv(name)).orElse("");
    }

    /** The first of these programs that is there. */
    public Optional<Path> find(String... names) {
        return Stream.of(names)
                .flatMap(name -> folders().map(folder -> folder.resolve(name)))
                .filter(program -> Files.isRegularFile(program) && Files.isExecutable(program))
                .findFirst();
    }

    private Stream<Path> folders() {
        return Stream.of(searchPath.split(File.pathSeparator))
                .filter(folder -> !folder.isEmpty())
                .map(Path::of);
    }

    /**
     * The first of these programs that is there; otherwise the test ends here.
     *
     * @throws AssertionError on a build machine, where every program is to be there
     */
    public Path need(String... names) {
        var program = find(names);
        if (program.isEmpty()) {
            String missing = "not installed: " + String.join(" or ", names);
            if (isBuildMachine()) {
                throw new AssertionError(missing + "; .ci/run says which package has it");
            }
            Assumptions.abort(missing);
        }
        return program.orElseThrow();
    }

    boolean isBuildMachine() {
        return !List.of("", "0", "false").contains(ci.strip().toLowerCase(java.util.Locale.ROOT));
    }

    /** What a program of this machine says on both channels, once it ended well. */
    public static String said(String name, String... arguments) throws IOException, InterruptedException {
        var command = Stream.concat(Stream.of(here().need(name).toString()), Stream.of(arguments));
        var process =
                new ProcessBuilder(command.toList()).redirectErrorStream(true).start();
        process.getOutputStream().close();
        String said = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
        assertThat(process.waitFor()).as(said).isZero();
        return said;
    }
}
