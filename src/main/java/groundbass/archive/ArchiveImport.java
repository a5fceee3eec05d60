package groundbass.archive;

import groundbass.archive.file.ArchiveFiles;
import groundbass.archive.file.ArchiveLimits;
import groundbass.archive.file.ArchiveNames;
import groundbass.archive.file.ArchiveRemark;
import groundbass.archive.file.DamagedFile;
import groundbass.archive.file.FolderSource;
import groundbass.archive.file.Rooted;
import groundbass.archive.file.Salvage;
import groundbass.archive.file.ZipDirectory;
import groundbass.archive.file.ZipSource;
import groundbass.catalog.educator.EducatorId;
import groundbass.form.Outcome;
import java.io.EOFException;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.zip.ZipException;

/**
 * Brings a series in: an archive with all that it holds, or a folder that somebody wrote, whose lessons come in as drafts.
 * Nothing that is here is changed, and what is here already does not come a second time. Each lesson comes in whole or
 * not at all; what is wrong with one keeps no other out.
 */
public final class ArchiveImport {
    /** The field that a fault of the file belongs to. */
    static final String FILE = "file";

    private final ArchiveParts parts;
    private final ArchiveLimits limits;

    public ArchiveImport(ArchiveParts parts, ArchiveLimits limits) {
        this.parts = parts;
        this.limits = limits;
    }

    /**
     * @param file a zip or a folder
     * @param address of the series, where it shall not have that of the archive; blank for that
     * @return refused, and nothing changed: {@code file} where it cannot be brought in at all, {@code address} where
     *     another series has its address
     * @throws IOException where this machine's disk fails
     */
    public Outcome<BroughtIn> bringIn(EducatorId owner, Path file, String address) throws IOException {
        if (Files.isDirectory(file)) {
            try (var folder = new FolderSource(file)) {
                return bringIn(owner, folder, address, Long.MAX_VALUE, List.of());
            }
        }
        long most = Math.min(limits.bytes(), Files.size(file) * ArchiveLimits.MOST_UNPACKED);
        if (ZipDirectory.length(file) > ZipDirectory.LONGEST) {
            return Outcome.refused(FILE, "archive.problem.large");
        }
        try (var zip = new ZipSource(file)) {
            return bringIn(owner, zip, address, most, List.of());
        } catch (ZipException | EOFException e) { // where its end says more than there is, it is the second
            return salvage(owner, file, address, most);
        }
    }

    private Outcome<BroughtIn> salvage(EducatorId owner, Path file, String address, long most) throws IOException {
        try (var rest = new Salvage(file)) {
            return rest.isEmpty()
                    ? Outcome.refused(FILE, rest.isCut() ? "archive.problem.large" : "archive.problem.no-zip")
                    : bringIn(
                            owner,
                            rest,
                            address,
                            most,
                            told(rest, file.getFileName().toString()));
        }
    }

    private static List<ArchiveRemark> told(Salvage rest, String file) {
        var brokeOff = ArchiveRemark.of(file, "archive.broke-off");
        return rest.isCut()
                ? List.of(
                        brokeOff,
                        ArchiveRemark.of(file, "archive.cut", Salvage.MOST_FILES, Salvage.MOST_BYTES / 1_000_000_000))
                : List.of(brokeOff);
    }

    private Outcome<BroughtIn> bringIn(
            EducatorId owner, ArchiveFiles source, String address, long most, List<ArchiveRemark> before)
            throws IOException {
        var rooted = Rooted.of(source);
        var arrival = new Arrival(parts, limits, owner, rooted, address.strip());
        arrival.findings.addAll(before);
        if (rooted.passedOver() > 0) {
            arrival.findings.add(ArchiveRemark.of("", "archive.passed-over", rooted.passedOver()));
        }
        try {
            boolean archive = rooted.names().stream()
                    .anyMatch(name -> name.equals(ArchiveNames.MANIFEST) || name.endsWith("/" + ArchiveNames.LESSON));
            return archive ? new ArchiveRun(arrival).bringIn(most) : new WrittenRun(arrival).bringIn();
        } catch (DamagedFile e) {
            return Outcome.refused(FILE, e.why().key(), e.why().args().toArray());
        }
    }
}
