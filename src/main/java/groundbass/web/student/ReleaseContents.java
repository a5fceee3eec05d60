package groundbass.web.student;

import groundbass.effort.Heap;
import groundbass.lesson.PageContent;
import groundbass.release.FileRole;
import groundbass.release.PageJson;
import groundbass.release.ReleaseFile;
import groundbass.release.ReleaseId;
import groundbass.release.Releases;
import groundbass.store.Blobs;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Optional;

/** What a release says, read from its files. Releases never change, so what was read holds for good. Thread-safe. */
final class ReleaseContents {
    private static final int PART_OF_HEAP = 16;
    /** What is read takes about so many times the bytes that it is written in. */
    private static final int UNFOLDED = 3;

    private record Read(PageContent content, int size) {}

    private final Releases releases;
    private final Blobs blobs;
    private final Remembered<ReleaseId, Read> pages;

    ReleaseContents(Releases releases, Blobs blobs) {
        this.releases = releases;
        this.blobs = blobs;
        this.pages = Remembered.within(Heap.partOf(PART_OF_HEAP), Read::size);
    }

    List<ReleaseFile> files(ReleaseId id) {
        return releases.files(id);
    }

    /** What its page says; empty for a release without a page. */
    Optional<PageContent> page(ReleaseId id) {
        return pages.get(id, () -> read(id)).map(Read::content);
    }

    /** A file as text, for a picture that becomes a part of the page. */
    String text(ReleaseFile file) {
        return new String(bytes(file), StandardCharsets.UTF_8);
    }

    private Optional<Read> read(ReleaseId id) {
        return releases.files(id).stream()
                .filter(file -> file.role() == FileRole.PAGE)
                .findFirst()
                .map(file -> read(bytes(file)));
    }

    private static Read read(byte[] page) {
        return new Read(PageJson.read(page), UNFOLDED * page.length);
    }

    private byte[] bytes(ReleaseFile file) {
        try (var in = blobs.open(file.sha256())) {
            return in.readAllBytes();
        } catch (IOException e) {
            throw new UncheckedIOException("a file of a release cannot be read: " + file.name(), e);
        }
    }
}
