package groundbass;

import groundbass.linetext.LineText;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Parameters;

/** {@code check}: tells what is wrong with line files. */
@Command(
        name = "check",
        description = "Tells what is wrong with line files, as file:line:column: message; exits with 1 on errors.")
final class CheckCommand implements Callable<Integer> {
    @Parameters(arity = "1..*", paramLabel = "LINE", description = "Files of line text.")
    private List<Path> files;

    @Mixin
    private Reports reports;

    @Override
    public Integer call() throws IOException {
        boolean errors = false;
        for (Path file : files) {
            var reading = LineText.read(file.toString(), Files.readString(file));
            reports.print(reading);
            errors |= reading.hasErrors();
        }
        return errors ? 1 : 0;
    }
}
