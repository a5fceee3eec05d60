package groundbass.cli;

import groundbass.backup.BackupManifest;
import groundbass.site.Backups;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Path;
import java.time.Clock;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.ExitCode;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.ParentCommand;

/** {@code admin backup}: a whole site in one file. */
@Command(
        name = "backup",
        mixinStandardHelpOptions = true,
        description = {
            "Writes a whole site into one file: rows, sheets, sounds, recordings.",
            "It holds addresses of students and secrets of the site; keep it where only those read it who answer for"
                    + " the site. Of a running server with the embedded database the desk gives one (Settings)."
        })
final class BackupCommand implements Callable<Integer> {
    @ParentCommand
    private AdminCommand admin;

    @Parameters(paramLabel = "FILE", description = "The file to write, a zip; there must be none of this name.")
    private Path file;

    @Override
    public Integer call() {
        return admin.reading(site -> {
            var manifest = make(site);
            admin.say(file + ": " + told(manifest));
            if (!manifest.missing().isEmpty()) {
                return admin.refuse("Files that rows name and that are gone or damaged: "
                        + manifest.missing().size() + ". The backup has all the rest. The desk tells whose they are.");
            }
            return ExitCode.OK;
        });
    }

    private BackupManifest make(AdminSite site) {
        try {
            return Backups.make(site.database, admin.config(), file, Clock.systemUTC());
        } catch (FileAlreadyExistsException e) {
            throw new AdminSite.Refused("There is a file " + file + " already; it is left as it is. Name another.");
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    static String told(BackupManifest manifest) {
        return manifest.rows() + " rows of " + manifest.tables().size() + " tables, " + manifest.files() + " files of "
                + manifest.bytes() + " bytes, as of " + manifest.made();
    }
}
