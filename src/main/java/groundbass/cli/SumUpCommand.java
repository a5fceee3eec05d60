package groundbass.cli;

import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.ExitCode;
import picocli.CommandLine.ParentCommand;

/** {@code admin sum-up}: the sums of statistics once more, from the records. */
@Command(
        name = "sum-up",
        mixinStandardHelpOptions = true,
        description = {
            "Throws the sums of statistics away and makes them again from the records.",
            "A running site keeps them by itself; this is for the day on which admin verify finds a difference."
        })
final class SumUpCommand implements Callable<Integer> {
    @ParentCommand
    private AdminCommand admin;

    @Override
    public Integer call() {
        return admin.with(site -> {
            site.accounts.rollUps().recompute();
            admin.say("The sums of statistics are made again.");
            return ExitCode.OK;
        });
    }
}
