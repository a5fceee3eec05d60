package groundbass.cli;

import groundbass.intake.Brought;
import groundbass.intake.Intake;
import groundbass.intake.Intake.Refused;
import groundbass.intake.Intake.Unclear;
import groundbass.intake.notice.FilePart;
import groundbass.text.Messages;
import java.io.IOException;
import java.io.InputStream;
import java.io.PrintWriter;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Spec;

/** {@code convert}: files of other programs become line text, which {@code render} makes everything else of. */
@Command(
        name = "convert",
        mixinStandardHelpOptions = true,
        description = {
            "Reads MusicXML (.musicxml, .xml, .mxl) and MIDI files (.mid) as line text: DIR/<name of the file>.line.",
            "What was guessed, changed or left out stands in the text as comments, and is told.",
            "Exits with 1 where a file cannot be read or several of its parts may be the bass."
        })
public final class ConvertCommand implements Callable<Integer> {
    @Parameters(arity = "1..*", paramLabel = "FILE", description = "Files of other programs.")
    private List<Path> files = List.of();

    @Option(names = "--out", required = true, paramLabel = "DIR", description = "Folder to write to; made if missing.")
    private Path out = Path.of("");

    @Option(
            names = "--part",
            paramLabel = "NUMBER",
            description = "Which part is meant; without it the one that is clearly the bass.")
    private Optional<Integer> part = Optional.empty();

    @Option(names = "--force", description = "Writes over a line file that is there already.")
    private boolean force;

    @Mixin
    private Language language;

    @Spec
    private CommandSpec command;

    @Override
    public Integer call() throws IOException {
        Files.createDirectories(out);
        boolean good = true;
        for (Path file : files) {
            good &= convert(file);
        }
        return good ? LineFiles.FINE : LineFiles.WITH_ERRORS;
    }

    private boolean convert(Path file) throws IOException {
        var content = content(file);
        if (content.isEmpty()) {
            return false;
        }
        var outcome = Intake.read(content.get(), part);
        var messages = language.messages();
        if (outcome instanceof Brought brought) {
            return write(file, brought, messages);
        }
        String why = outcome instanceof Refused refused
                ? messages.say(refused.why())
                : unclear(((Unclear) outcome).parts(), messages);
        say(file, messages.say("remark.error") + ": " + why);
        return false;
    }

    /** One byte more than is read tells that there are more. */
    private Optional<byte[]> content(Path file) {
        try (InputStream in = Files.newInputStream(file)) {
            return Optional.of(in.readNBytes(Intake.LARGEST + 1));
        } catch (NoSuchFileException e) {
            say(file, "error: there is no such file");
        } catch (IOException e) {
            say(file, "error: cannot be read: " + e.getMessage());
        }
        return Optional.empty();
    }

    private static String unclear(List<FilePart> parts, Messages messages) {
        var text = new StringBuilder(messages.say("intake.unclear"));
        parts.forEach(each -> text.append("\n    ").append(messages.say(each.choice())));
        return text.toString();
    }

    private boolean write(Path file, Brought brought, Messages messages) throws IOException {
        Path target = out.resolve(FileStem.of(file) + ".line");
        if (Files.exists(target) && !force) {
            say(file, "error: " + target + " is there already; --force writes over it");
            return false;
        }
        Files.writeString(target, brought.text(messages));
        brought.notices().forEach(notice -> say(file, messages.say(notice.sentence())));
        return true;
    }

    private void say(Path file, String text) {
        PrintWriter err = command.commandLine().getErr();
        err.println(file + ": " + text);
        err.flush();
    }
}
