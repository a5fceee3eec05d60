package groundbass.cli;

import groundbass.linetext.LineText;
import groundbass.linetext.Reading;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.charset.CharacterCodingException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** The line files that a command is given; tells what is wrong with each on standard error. */
final class LineFiles {
    private static final int FINE = 0;
    static final int WITH_ERRORS = 1;

    @Parameters(arity = "0..*", paramLabel = "LINE", description = "Files of line text.")
    private List<Path> files = List.of();

    @Spec(Spec.Target.MIXEE)
    private CommandSpec command;

    /** What is done with one that could be read, whole or in part. */
    @FunctionalInterface
    interface Use {
        void of(Path file, Reading reading) throws IOException;
    }

    /** @return the exit code: 1 where any file has an error or cannot be read */
    int each(Use use) throws IOException {
        if (files.isEmpty()) {
            throw new ParameterException(command.commandLine(), "Missing required parameter: 'LINE'");
        }
        boolean errors = false;
        for (Path file : files) {
            var reading = read(file);
            if (reading.isPresent()) {
                use.of(file, reading.get());
            }
            errors |= reading.map(Reading::hasErrors).orElse(true);
        }
        return errors ? WITH_ERRORS : FINE;
    }

    private Optional<Reading> read(Path file) {
        try {
            var reading = LineText.read(file.toString(), Files.readString(file));
            say(reading.report());
            return Optional.of(reading);
        } catch (IOException e) {
            say(file + ": error: " + reason(e) + "\n");
            return Optional.empty();
        }
    }

    private static String reason(IOException e) {
        if (e instanceof NoSuchFileException) {
            return "there is no such file";
        }
        return e instanceof CharacterCodingException
                ? "this is not text in UTF-8"
                : "cannot be read: " + e.getMessage();
    }

    private void say(String text) {
        PrintWriter err = command.commandLine().getErr();
        err.print(text);
        err.flush();
    }
}
