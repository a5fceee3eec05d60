package groundbass.cli;

import groundbass.groove.GrooveText;
import groundbass.lesson.LineRemarks;
import groundbass.remark.Report;
import groundbass.remark.Source;
import groundbass.text.Messages;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** {@code check}: tells what is wrong with line files, and what a teacher would remark on in what can be read of them. */
@Command(
        name = "check",
        mixinStandardHelpOptions = true,
        description = {
            "Tells what is wrong with line files, as file:line:column: message, and what a teacher would remark on.",
            "Exits with 1 on errors; what no hand can play is one."
        })
public final class CheckCommand implements Callable<Integer> {
    @Mixin
    private LineFiles files;

    @Option(names = "--groove", paramLabel = "FILE", description = "A groove's text to check as well; may be repeated.")
    private List<Path> grooves = List.of();

    @Mixin
    private Language language;

    @Override
    public Integer call() throws IOException {
        var messages = language.messages();
        boolean wrong = false;
        for (Path groove : grooves) {
            wrong |= tellGroove(groove, messages);
        }
        if (files.isEmpty() && !grooves.isEmpty()) {
            return wrong ? LineFiles.WITH_ERRORS : LineFiles.FINE;
        }
        int code = files.each(messages, LineRemarks::of, (file, reading) -> {});
        return wrong ? LineFiles.WITH_ERRORS : code;
    }

    /** @return whether anything is wrong with it */
    private boolean tellGroove(Path file, Messages messages) {
        return files.text(file)
                .map(text -> files.tell(
                        new Report(Source.of(file.toString(), text), messages),
                        GrooveText.read(text).problems()))
                .orElse(true);
    }
}
