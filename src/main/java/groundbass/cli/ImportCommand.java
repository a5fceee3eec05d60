package groundbass.cli;

import groundbass.archive.BroughtIn;
import groundbass.archive.file.ArchiveRemark;
import groundbass.catalog.educator.Educator;
import groundbass.form.FieldProblem;
import groundbass.form.Outcome;
import groundbass.site.Archives;
import groundbass.site.SiteLock;
import groundbass.text.Message;
import groundbass.text.Messages;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.util.Locale;
import java.util.Optional;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.ExitCode;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.ParentCommand;

/** {@code admin import}: a series out of an archive, or out of files that somebody wrote. */
@Command(
        name = "import",
        mixinStandardHelpOptions = true,
        description = {
            "Brings a series in: an archive that export wrote, or a folder (or zip) of lines and notes.",
            "What is here is left as it is. Lessons of an archive that were out are out at once; written ones are drafts.",
            "Exits with 1 where a lesson could not be brought in; all others are."
        })
final class ImportCommand implements Callable<Integer> {
    private static final Messages WORDS = Messages.of(Locale.ENGLISH);

    @ParentCommand
    private AdminCommand admin;

    @Parameters(paramLabel = "FILE|FOLDER", description = "What export wrote, or a folder of the same form.")
    private Path file;

    @Option(names = "--email", paramLabel = "ADDRESS", description = "Whose desk it goes to, where several teach here.")
    private Optional<String> email = Optional.empty();

    @Option(
            names = "--address",
            paramLabel = "NAME",
            description = "The address of the series, where it shall have another than it says.")
    private String address = "";

    @Override
    public Integer call() {
        return admin.told(() -> {
            if (!Files.exists(file)) {
                throw new AdminSite.Refused("There is no file or folder " + file + ".");
            }
            var outcome = bringIn(Clock.systemUTC());
            outcome.problems().forEach(problem -> admin.refuse(file + ": " + said(problem)));
            return outcome.result().map(this::told).orElse(ExitCode.SOFTWARE);
        });
    }

    /** The lock first: to open the database may change it under a server. */
    private Outcome<BroughtIn> bringIn(Clock clock) {
        var config = admin.config();
        AdminSite.demandThere(config);
        try (var lock = SiteLock.take(config, clock);
                var site = AdminSite.open(config, clock)) {
            var owner = owner(site);
            return Archives.toWrite(site.database, config, lock, clock)
                    .importing()
                    .bringIn(owner.id(), file, address);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private Educator owner(AdminSite site) {
        var educators = site.accounts.educators();
        if (email.isPresent()) {
            return educators
                    .withEmail(email.get())
                    .orElseThrow(() -> new AdminSite.Refused(
                            "No educator signs in with " + email.get() + ". Who there is: admin educators"));
        }
        if (educators.all().size() > 1) {
            throw new AdminSite.Refused("Several teach here. Say whose desk it goes to: --email ADDRESS");
        }
        return educators
                .owner()
                .orElseThrow(() -> new AdminSite.Refused("Nobody has a desk yet; serve prints a set-up code."));
    }

    private int told(BroughtIn brought) {
        brought.findings().forEach(finding -> admin.say(said(finding)));
        admin.say(brought.series().title() + " (/series/" + brought.series().slug() + "): "
                + WORDS.say(Message.of("archive.brought", brought.lessons(), brought.already(), brought.damaged())));
        return brought.damaged() == 0 ? ExitCode.OK : ExitCode.SOFTWARE;
    }

    private static String said(ArchiveRemark finding) {
        String where = finding.where().isEmpty() ? "" : finding.where() + ": ";
        return where + WORDS.say(finding.what());
    }

    private static String said(FieldProblem problem) {
        return WORDS.say(new Message(problem.key(), problem.args()));
    }
}
