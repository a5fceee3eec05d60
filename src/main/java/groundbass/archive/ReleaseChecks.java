package groundbass.archive;

import groundbass.archive.file.DamagedFile;
import groundbass.archive.file.Texts;
import groundbass.catalog.FieldChecks;
import groundbass.catalog.episode.RevisionId;
import groundbass.lesson.PageContent;
import groundbass.release.BuildSpec;
import groundbass.release.BuildSpecJson;
import groundbass.release.FileRole;
import groundbass.release.PageJson;
import groundbass.release.ReleaseFile;
import java.io.UncheckedIOException;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;

/**
 * What a release from outside must be before its files are shown under this site's name: of the types that releases are
 * made of, its drawings no more than drawings, its links those that a lesson may have.
 */
final class ReleaseChecks {
    /** The most bytes of what becomes a part of a page. */
    static final int LONGEST_PAGE = 1 << 24;

    private static final String SVG = "image/svg+xml";
    private static final String PNG = "image/png";
    private static final String JPEG = "image/jpeg";
    private static final byte[] PNG_SIGNATURE = {(byte) 0x89, 'P', 'N', 'G', '\r', '\n', 0x1a, '\n'};
    private static final Set<String> TYPES = Set.of(
            "application/zip",
            "application/pdf",
            "application/json",
            "application/vnd.recordare.musicxml",
            "application/vnd.recordare.musicxml+xml",
            "audio/midi",
            "audio/mpeg",
            "audio/flac",
            "audio/wav",
            "audio/ogg; codecs=opus",
            "text/plain; charset=us-ascii",
            "text/plain; charset=utf-8",
            SVG,
            PNG,
            JPEG);
    private static final Pattern STEM = Pattern.compile("[a-z0-9]+(-[a-z0-9]+)*");
    private static final Pattern ADDRESS = Pattern.compile("https?://[^\\s\"<>]{1,500}");
    private static final int LONGEST_STEM = 200;

    private ReleaseChecks() {}

    /** A build specification as it was written into the archive. */
    static BuildSpec spec(LessonPart.ReleasePart part, Set<RevisionId> revisions) throws DamagedFile {
        BuildSpec spec;
        try {
            spec = BuildSpecJson.read(part.madeOf().toString());
        } catch (RuntimeException e) { // what we wrote can be read; this is somebody else's
            throw DamagedFile.of("archive.problem.json");
        }
        boolean sound = spec.release() == part.number()
                && part.number() >= 1
                && revisions.contains(spec.revision())
                && spec.fileStem().length() <= LONGEST_STEM
                && STEM.matcher(spec.fileStem()).matches()
                && ADDRESS.matcher(spec.episodeAddress()).matches()
                && FieldChecks.line("series", spec.series(), LONGEST_STEM).isEmpty();
        if (!sound) {
            throw DamagedFile.of("archive.problem.json");
        }
        return spec;
    }

    static FileRole role(String word) throws DamagedFile {
        return Arrays.stream(FileRole.values())
                .filter(role -> role.value().equals(word))
                .findFirst()
                .orElseThrow(() -> DamagedFile.of("archive.problem.json"));
    }

    /** Whether a file of this role may be of this type. */
    static boolean isUsual(FileRole role, String mediaType) {
        boolean drawn = mediaType.equals(SVG) || mediaType.equals(PNG);
        boolean taken = mediaType.equals(JPEG) || mediaType.equals(PNG);
        return switch (role) {
            case PICTURE -> drawn;
            case NOTE_PICTURE -> taken;
            default -> TYPES.contains(mediaType) && !drawn && !taken;
        };
    }

    /** Whether a page reads this file's content in. */
    static boolean isRead(FileRole role) {
        return role == FileRole.PICTURE || role == FileRole.PAGE;
    }

    /**
     * @param content of a file that {@link #isRead is read}
     * @param files all of its release
     */
    static boolean isSafe(ReleaseFile file, byte[] content, List<ReleaseFile> files) throws DamagedFile {
        if (file.role() == FileRole.PAGE) {
            return page(content).filter(page -> isSafe(page, files)).isPresent();
        }
        return file.mediaType().equals(PNG)
                ? Arrays.equals(
                        content,
                        0,
                        Math.min(content.length, PNG_SIGNATURE.length),
                        PNG_SIGNATURE,
                        0,
                        PNG_SIGNATURE.length)
                : SafeDrawing.isSafe(Texts.text(file.name(), content));
    }

    private static Optional<PageContent> page(byte[] content) {
        try {
            return Optional.ofNullable(PageJson.read(content));
        } catch (UncheckedIOException | NullPointerException e) {
            return Optional.empty();
        }
    }

    private static boolean isSafe(PageContent page, List<ReleaseFile> files) {
        boolean links = (page.video().isEmpty()
                        || FieldChecks.secureAddress(page.video()).isPresent())
                && page.courses().stream().allMatch(course -> FieldChecks.secureAddress(course.address())
                        .isPresent());
        boolean pieces = page.pieces().stream().allMatch(piece -> SafeDrawing.isSafe(piece.svg()));
        boolean pictures = page.lines().stream()
                .flatMap(line -> line.pictures().stream())
                .allMatch(picture -> files.stream()
                        .anyMatch(file -> file.name().equals(picture.file())
                                && file.mediaType().equals(SVG)));
        boolean photos = page.photos().stream().allMatch(photo -> files.stream()
                .anyMatch(file -> file.name().equals(photo.file()) && file.role() == FileRole.NOTE_PICTURE));
        return links && pieces && pictures && photos;
    }
}
