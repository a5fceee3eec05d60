package groundbass.cli;

import groundbass.site.StoreCheck;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.time.Clock;
import java.util.List;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.ExitCode;
import picocli.CommandLine.ParentCommand;

/** {@code admin verify}: the stored files against the rows that name them, and the sums of statistics against the records. */
@Command(
        name = "verify",
        mixinStandardHelpOptions = true,
        description = {
            "Reads every stored file and tells which are missing or damaged; counts every download that statistics have summed"
                    + " up once more, and tells where the sums differ.",
            "Exit status 1 where anything is. A running site looks through them by itself, a few at a time."
        })
final class VerifyCommand implements Callable<Integer> {
    @ParentCommand
    private AdminCommand admin;

    @Override
    public Integer call() {
        return admin.reading(site -> {
            var found = check(site);
            admin.say("whole: " + found.good() + " files, " + found.bytes() + " bytes");
            admin.say("no longer named by any row: " + found.unnamed());
            found.bad().forEach(sha256 -> admin.say("missing or damaged: " + sha256));
            var differences = site.accounts.rollUps().differences();
            admin.say(differences.isEmpty() ? "sums of statistics: as the records say" : "sums of statistics:");
            differences.forEach(admin::say);
            return answer(found, differences);
        });
    }

    private int answer(StoreCheck found, List<String> differences) {
        if (!found.bad().isEmpty()) {
            return admin.refuse("Start the server: it makes anew what can be made of its lesson, and its desk names"
                    + " what is lost. What is lost comes back from a backup.");
        }
        return differences.isEmpty()
                ? ExitCode.OK
                : admin.refuse("admin sum-up makes the sums again from the records.");
    }

    private StoreCheck check(AdminSite site) {
        try {
            return StoreCheck.of(site.database, admin.config(), Clock.systemUTC());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
