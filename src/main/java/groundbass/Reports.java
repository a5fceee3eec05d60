package groundbass;

import groundbass.linetext.Reading;
import java.io.PrintWriter;
import picocli.CommandLine.Command;
import picocli.CommandLine.Model.CommandSpec;
import picocli.CommandLine.Spec;

/** Prints what is wrong with a line text, on standard error. */
@Command // a mixin must be one, or no command starts
final class Reports {
    @Spec(Spec.Target.MIXEE)
    private CommandSpec command;

    void print(Reading reading) {
        PrintWriter err = command.commandLine().getErr();
        err.print(reading.report());
        err.flush();
    }
}
