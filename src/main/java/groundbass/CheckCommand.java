package groundbass;

import java.io.IOException;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;

/** {@code check}: tells what is wrong with line files. */
@Command(
        name = "check",
        mixinStandardHelpOptions = true,
        description = "Tells what is wrong with line files, as file:line:column: message; exits with 1 on errors.")
final class CheckCommand implements Callable<Integer> {
    @Mixin
    private LineFiles files;

    @Override
    public Integer call() throws IOException {
        return files.each((file, reading) -> {});
    }
}
