package groundbass.web.student.lesson;

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
import java.nio.file.NoSuchFileException;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicInteger;
import org.slf4j.Logger;
import org.slf4j.LoggerFactory;

/** What a release says, read from its files. Releases never change, so what was read holds for good. Thread-safe. */
public final class ReleaseContents {
    private static final Logger log = LoggerFactory.getLogger(ReleaseContents.class);
    private static final int PART_OF_HEAP = 16;
    /** What is read takes about so many times the bytes that it is written in. */
    private static final int UNFOLDED = 3;

    /** A language is little beside a page, so those of some thousand lessons fit. */
    private static final int PART_FOR_LANGUAGES = 512;

    /** What one takes in bytes, with the release that it is kept for: about so many. */
    private static final int LANGUAGE = 250;

    private record Read(PageContent content, int size) {}

    private final Releases releases;
    private final Blobs blobs;
    private final TimedCache<ReleaseId, Read> pages;
    private final TimedCache<ReleaseId, String> languages;
    private final AtomicInteger failures = new AtomicInteger();

    public ReleaseContents(Releases releases, Blobs blobs) {
        this(releases, blobs, Heap.partOf(PART_OF_HEAP));
    }

    /** @param bytes how much of what pages say is remembered */
    ReleaseContents(Releases releases, Blobs blobs, long bytes) {
        this.releases = releases;
        this.blobs = blobs;
        this.pages = TimedCache.within(bytes, Read::size);
        this.languages = TimedCache.within(Heap.partOf(PART_FOR_LANGUAGES), language -> LANGUAGE);
    }

    List<ReleaseFile> files(ReleaseId id) {
        return releases.files().of(id);
    }

    /**
     * What its page says; empty for a release without a page.
     *
     * @throws UncheckedIOException where that file is damaged or missing
     */
    Optional<PageContent> page(ReleaseId id) {
        return pages.get(id, () -> read(id)).map(Read::content);
    }

    /** The same for a list; empty where its page cannot be read, since a list shows other lessons too. */
    Optional<PageContent> listed(ReleaseId id) {
        try {
            return page(id);
        } catch (UncheckedIOException e) {
            without("the page of release " + id, e);
            return Optional.empty();
        }
    }

    /**
     * The language that its title and texts are in; empty where that is not known. A long list asks for many, so it
     * outlasts the rest of the page.
     */
    String language(ReleaseId id) {
        return languages.get(id, () -> listed(id).map(PageContent::language)).orElse("");
    }

    /** A file as text, for a picture that becomes a part of the page; empty where it is damaged or missing. */
    Optional<String> text(ReleaseFile file) {
        try {
            return Optional.of(new String(bytes(file), StandardCharsets.UTF_8));
        } catch (UncheckedIOException e) {
            without(file.name(), e);
            return Optional.empty();
        }
    }

    private void without(String what, UncheckedIOException e) {
        failures.incrementAndGet();
        log.error("a page is shown without {}", what, e);
    }

    /** What a page that is kept adds to its version: one that lacks something must not be kept until it is mended. */
    String version() {
        int failed = failures.get();
        return failed == 0 ? "" : "-" + failed;
    }

    private Optional<Read> read(ReleaseId id) {
        return releases.files().of(id).stream()
                .filter(file -> file.role() == FileRole.PAGE)
                .findFirst()
                .map(this::read);
    }

    private Read read(ReleaseFile file) {
        try {
            byte[] page = bytes(file);
            return new Read(PageJson.read(page), UNFOLDED * page.length);
        } catch (UncheckedIOException e) {
            verify(file);
            throw e;
        }
    }

    /** What cannot be understood is probably damaged, and then to be mended. */
    private void verify(ReleaseFile file) {
        try {
            if (blobs.verify(file.sha256()).isEmpty()) {
                throw new NoSuchFileException(file.name());
            }
        } catch (IOException e) {
            throw new UncheckedIOException("a file of a release is damaged: " + file.name(), e);
        }
    }

    private byte[] bytes(ReleaseFile file) {
        try (var in = blobs.open(file.sha256())) {
            return in.readAllBytes();
        } catch (IOException e) {
            throw new UncheckedIOException("a file of a release cannot be read: " + file.name(), e);
        }
    }
}
