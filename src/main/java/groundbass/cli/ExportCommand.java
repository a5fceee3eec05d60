package groundbass.cli;

import groundbass.archive.SeriesExport;
import groundbass.catalog.series.Series;
import groundbass.site.Archives;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Path;
import java.time.Clock;
import java.util.concurrent.Callable;
import picocli.CommandLine.Command;
import picocli.CommandLine.ExitCode;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.ParentCommand;

/** {@code admin export}: one series in one file. */
@Command(
        name = "export",
        mixinStandardHelpOptions = true,
        description = {
            "Writes one series into a zip that people can read: lines, notes, recordings, sheets, sounds, settings.",
            "It holds drafts too, but no students and no record of what they took."
        })
final class ExportCommand implements Callable<Integer> {
    @ParentCommand
    private AdminCommand admin;

    @Parameters(paramLabel = "SERIES", description = "The address of the series on the site: harbour-rounds.")
    private String address;

    @Option(
            names = "--to",
            required = true,
            paramLabel = "FILE",
            description = "The file to write, a zip; there must be none of this name.")
    private Path file;

    @Override
    public Integer call() {
        return admin.reading(site -> {
            var archives = archives(site);
            var series = archives.series(address)
                    .orElseThrow(() -> new AdminSite.Refused("There is no series with the address \"" + address
                            + "\". It is what stands behind /series/ in the address of its page."));
            var written = make(archives, series);
            admin.say(file + ": lessons " + written.lessons() + ", files " + written.files());
            return written.missing().isEmpty()
                    ? ExitCode.OK
                    : admin.refuse("Files that the site has lost and the archive does without:\n"
                            + String.join("\n", written.missing()));
        });
    }

    private Archives archives(AdminSite site) {
        try {
            return Archives.toRead(site.database, admin.config(), Clock.systemUTC());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private SeriesExport.Written make(Archives archives, Series series) {
        try {
            return archives.make(series, file);
        } catch (FileAlreadyExistsException e) {
            throw new AdminSite.Refused("There is a file " + file + " already; it is left as it is. Name another.");
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
