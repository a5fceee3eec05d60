package groundbass.cli;

import groundbass.checks.Checks;
import groundbass.checks.Finding;
import groundbass.checks.Repair;
import groundbass.linetext.Reading;
import groundbass.linetext.problem.Problem;
import groundbass.linetext.problem.Severity;
import groundbass.text.Message;
import groundbass.text.Messages;
import java.io.IOException;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** {@code check}: tells what is wrong with line files, and what a teacher would remark on in those that can be read. */
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

    @Spec
    private CommandSpec command;

    private final Messages messages = Messages.of(Locale.ENGLISH);

    @Override
    public Integer call() throws IOException {
        var impossible = new boolean[1];
        int code = files.each((file, reading) -> impossible[0] |= remark(reading));
        return impossible[0] ? LineFiles.WITH_ERRORS : code;
    }

    /** @return whether anything cannot be played; a text with errors is not judged yet */
    private boolean remark(Reading reading) {
        if (reading.hasErrors()) {
            return false;
        }
        var problems = Checks.of(reading.line()).stream()
                .map(finding -> problem(reading, finding))
                .toList();
        var err = command.commandLine().getErr();
        problems.forEach(problem -> err.println(problem.in(reading.origins().source())));
        err.flush();
        return problems.stream().anyMatch(problem -> problem.severity() == Severity.ERROR);
    }

    private Problem problem(Reading reading, Finding finding) {
        var origins = reading.origins();
        var span = finding.notes().stream()
                .findFirst()
                .flatMap(note ->
                        origins.note(note.position().bar(), note.position().at(), note.string()))
                .orElseGet(() -> origins.at(finding.position()));
        return new Problem(
                severity(finding), finding.code(), span, messages.say(finding.reason()), suggestion(finding.repairs()));
    }

    private static Severity severity(Finding finding) {
        return switch (finding.severity()) {
            case IMPOSSIBLE -> Severity.ERROR;
            case UNWISE, WORTH_A_LOOK -> Severity.WARNING;
        };
    }

    private Optional<String> suggestion(List<Repair> repairs) {
        return repairs.stream()
                .map(Repair::label)
                .map((Message label) -> messages.say(label))
                .reduce((one, other) -> one + " or " + other);
    }
}
