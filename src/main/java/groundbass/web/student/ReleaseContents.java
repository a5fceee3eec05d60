package groundbass.web.student;

import groundbass.release.FileRole;
import groundbass.release.PageContent;
import groundbass.release.PageJson;
import groundbass.release.ReleaseFile;
import groundbass.release.ReleaseId;
import groundbass.release.Releases;
import groundbass.store.Blobs;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.util.List;
import java.util.Optional;

/** What a release says, read from its files. Releases never change, so what was read holds for good. Thread-safe. */
final class ReleaseContents {
    private static final int MOST = 200;

    private final Releases releases;
    private final Blobs blobs;
    private final Remembered<ReleaseId, PageContent> pages;

    ReleaseContents(Releases releases, Blobs blobs, Clock clock) {
        this.releases = releases;
        this.blobs = blobs;
        this.pages = new Remembered<>(clock, Remembered.FOR_GOOD, MOST);
    }

    List<ReleaseFile> files(ReleaseId id) {
        return releases.files(id);
    }

    /** What its page says; empty for a release without a page. */
    Optional<PageContent> page(ReleaseId id) {
        return pages.get(id, () -> read(id));
    }

    /** A file as text, for a picture that becomes a part of the page. */
    String text(ReleaseFile file) {
        return new String(bytes(file), StandardCharsets.UTF_8);
    }

    private Optional<PageContent> read(ReleaseId id) {
        return releases.files(id).stream()
                .filter(file -> file.role() == FileRole.PAGE)
                .findFirst()
                .map(file -> PageJson.read(bytes(file)));
    }

    private byte[] bytes(ReleaseFile file) {
        try (var in = blobs.open(file.sha256())) {
            return in.readAllBytes();
        } catch (IOException e) {
            throw new UncheckedIOException("a file of a release cannot be read: " + file.name(), e);
        }
    }
}
