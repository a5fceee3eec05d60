package groundbass.cli;

import groundbass.backup.BackupFile;
import groundbass.site.Backups;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.time.Clock;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.ExitCode;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.ParentCommand;

/** {@code admin restore}: a new site out of a backup. */
@Command(
        name = "restore",
        mixinStandardHelpOptions = true,
        description = {
            "Makes a new site of a backup, on either kind of database, and brings it up to date.",
            "Everybody signs in anew; letters that waited are not sent, for the old site may have sent them."
        })
final class RestoreCommand implements Callable<Integer> {
    @ParentCommand
    private AdminCommand admin;

    @Parameters(paramLabel = "FILE", description = "A file that backup wrote.")
    private Path file;

    @Option(names = "--dry-run", description = "Only reads all of it and tells what is in it.")
    private boolean dryRun;

    @Override
    public Integer call() {
        return admin.told(() -> {
            try (var backup = BackupFile.open(file)) {
                return restore(backup);
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        });
    }

    private int restore(BackupFile backup) throws IOException {
        if (dryRun) {
            backup.verify();
            admin.say(file + " is whole: " + BackupCommand.told(backup.manifest()));
            backup.manifest().tables().forEach(table -> admin.say(table.rows() + "\t" + table.table()));
        } else {
            Backups.restore(backup, admin.config(), Clock.systemUTC());
            admin.say("Restored into " + admin.config().place() + ": " + BackupCommand.told(backup.manifest()));
        }
        return ExitCode.OK;
    }
}
