package groundbass.web.shell;

import com.github.benmanes.caffeine.cache.Cache;
import com.github.benmanes.caffeine.cache.Caffeine;
import groundbass.effort.Heap;
import groundbass.web.answer.CachedResponse;
import groundbass.web.view.PageFrame;
import groundbass.web.view.Reader;
import java.util.function.Supplier;

/**
 * Rendered pages that do not depend on who reads them, as many as fit into a part of the heap; what is asked for least
 * goes first. Thread-safe.
 */
final class PageCache {
    private static final int PART_OF_HEAP = 8;

    /**
     * All that such a page depends on; {@code version} stands for its content. The frame's path is the page's one
     * address, since other spellings of it are sent there.
     */
    record Key(String template, String version, PageFrame frame, Reader reader) {}

    private final Cache<Key, CachedResponse> pages;

    PageCache() {
        this(Heap.partOf(PART_OF_HEAP));
    }

    /** @param bytes how much all pages together may take */
    PageCache(long bytes) {
        this.pages = Caffeine.newBuilder()
                .maximumWeight(bytes)
                .weigher((Key key, CachedResponse page) -> page.size())
                .build();
    }

    /** The page of {@code key}, rendered now if it is not here; readers who come meanwhile wait for it. */
    CachedResponse get(Key key, Supplier<CachedResponse> rendering) {
        return pages.get(key, unknown -> rendering.get());
    }

    /** How many bytes the pages take at this moment. */
    long bytes() {
        pages.cleanUp();
        return pages.policy().eviction().orElseThrow().weightedSize().orElseThrow();
    }
}
