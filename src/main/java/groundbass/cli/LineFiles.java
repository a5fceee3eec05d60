package groundbass.cli;

import groundbass.linetext.LineText;
import groundbass.linetext.Reading;
import groundbass.remark.Remark;
import groundbass.remark.Report;
import groundbass.text.Messages;
import java.io.IOException;
import java.io.PrintWriter;
import java.nio.charset.CharacterCodingException;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** The line files that a command is given; tells what is wrong with each on standard error. */
final class LineFiles {
    static final int FINE = 0;
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

    boolean isEmpty() {
        return files.isEmpty();
    }

    /** The first that a name of an earlier one fits. */
    Optional<Path> twin(Function<Path, String> name) {
        var names = new HashSet<String>();
        return files.stream().filter(file -> !names.add(name.apply(file))).findFirst();
    }

    /**
     * Hands on each file that can be read, after what is to be said of it.
     *
     * @param remarks what that is
     * @return the exit code: 1 where anything of it blocks, or a file cannot be read
     */
    int each(Messages messages, Function<Reading, List<Remark>> remarks, Use use) throws IOException {
        if (files.isEmpty()) {
            throw new ParameterException(command.commandLine(), "Missing required parameter: 'LINE'");
        }
        boolean wrong = false;
        for (Path file : files) {
            var text = text(file);
            wrong |= text.isEmpty();
            if (text.isPresent()) {
                var reading = LineText.read(file.toString(), text.get());
                wrong |= tell(new Report(reading.origins().source(), messages), remarks.apply(reading));
                use.of(file, reading);
            }
        }
        return wrong ? WITH_ERRORS : FINE;
    }

    /** @return whether any of the remarks blocks */
    boolean tell(Report report, List<Remark> remarks) {
        say(report.of(remarks));
        return remarks.stream().anyMatch(remark -> remark.severity().blocks());
    }

    /** What stands in a file; empty where it cannot be read, after saying so. */
    Optional<String> text(Path file) {
        try {
            return Optional.of(Files.readString(file));
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
