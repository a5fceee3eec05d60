package groundbass.release;

import groundbass.release.zip.StoredZip;
import groundbass.release.zip.ZipPiece;
import groundbass.store.Blobs;
import java.io.IOException;
import java.io.OutputStream;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.zip.CRC32;
import java.util.zip.CheckedInputStream;
import java.util.zip.ZipEntry;
import java.util.zip.ZipOutputStream;

/**
 * All files to take home in one zip, the same bytes for the same files: entries in the given order, in a folder of the
 * lesson's name, so that two lessons can be unpacked into one place, each dated as the release is. Sound is stored as it
 * is, since it does not shrink.
 */
final class Bundle {
    /** A phone can take this over a slow line. */
    static final long LARGEST = 60L * 1000 * 1000;

    /** Java takes the very first moment for one before the calendar of the format, and adds a field in its own zone. */
    private static final LocalDateTime EARLIEST = LocalDateTime.of(1980, 1, 1, 0, 0, 2);

    private Bundle() {}

    /** Room for the zip's own entries and the read-me. */
    private static final long SPARE = 200_000;

    /** Single files first, then practice tracks from the line's own tempo outward: what matters least is left out. */
    private static final Comparator<ReleaseFile> NEED = Comparator.comparingInt(file -> PracticeTrack.of(file)
            .map(track -> 1 + Math.abs(track.percent() - PracticeTrack.WHOLE))
            .orElse(file.role() == FileRole.OWN_TRACK ? 1 : 0));

    /** The files that fit, in their order. */
    static List<ReleaseFile> fitting(List<ReleaseFile> files) {
        var fitting = new HashSet<ReleaseFile>();
        long size = SPARE;
        for (var file : files.stream()
                .filter(each -> each.role().isBundled())
                .sorted(NEED)
                .toList()) {
            if (size + file.size() <= LARGEST) {
                fitting.add(file);
                size += file.size();
            }
        }
        return files.stream().filter(fitting::contains).toList();
    }

    static void write(BuildSpec spec, List<ReleaseFile> files, Blobs blobs, OutputStream out) throws IOException {
        var zip = new ZipOutputStream(out);
        for (var file : files) {
            zip.putNextEntry(entry(spec, file, blobs));
            try (var content = blobs.open(file.sha256())) {
                content.transferTo(zip);
            }
            zip.closeEntry();
        }
        zip.finish();
    }

    /** The same as it is put together while it is sent: heads between files that are stored as they are. */
    static List<ZipPiece> pieces(BuildSpec spec, List<ReleaseFile> files, Blobs blobs) throws IOException {
        var zip = new StoredZip(time(spec.date()));
        for (var file : files) {
            zip.add(spec.fileStem() + "/" + path(spec, file), file.sha256(), file.size(), crc(blobs, file));
        }
        return zip.pieces();
    }

    /** What goes into the bundle of a release, its read-me first; never what came to the release later. */
    static List<ReleaseFile> content(List<ReleaseFile> files) {
        var content = new ArrayList<ReleaseFile>();
        files.stream().filter(file -> file.role() == FileRole.READ_ME).forEach(content::add);
        content.addAll(fitting(
                files.stream().filter(file -> file.role() != FileRole.READ_ME).toList()));
        return content;
    }

    /** The path of a file inside the bundle's folder: the name that it has alone, so that two lessons never meet. */
    static String path(BuildSpec spec, ReleaseFile file) {
        boolean own = spec.has(Feature.NAMES_OF_ITS_OWN) && file.role() != FileRole.READ_ME;
        String name = own ? spec.fileStem() + "-" + file.name() : file.name();
        return file.role() == FileRole.PRACTICE ? "practice/" + name : name;
    }

    private static ZipEntry entry(BuildSpec spec, ReleaseFile file, Blobs blobs) throws IOException {
        var entry =
                new ZipEntry(spec.has(Feature.FOLDER) ? spec.fileStem() + "/" + path(spec, file) : path(spec, file));
        entry.setTimeLocal(spec.has(Feature.FOLDER) ? time(spec.date()) : EARLIEST);
        if (file.mediaType().startsWith("audio/mpeg")) {
            entry.setMethod(ZipEntry.STORED);
            entry.setSize(file.size());
            entry.setCrc(crc(blobs, file));
        }
        return entry;
    }

    private static LocalDateTime time(LocalDate date) {
        var noon = date.atTime(LocalTime.NOON);
        return noon.isBefore(EARLIEST) ? EARLIEST : noon;
    }

    private static long crc(Blobs blobs, ReleaseFile file) throws IOException {
        var crc = new CRC32();
        try (var content = new CheckedInputStream(blobs.open(file.sha256()), crc)) {
            content.transferTo(OutputStream.nullOutputStream());
        }
        return crc.getValue();
    }
}
