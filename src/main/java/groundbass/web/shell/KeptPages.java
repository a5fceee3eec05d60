package groundbass.web.shell;

import groundbass.web.answer.StoredBytes;
import groundbass.web.view.Frame;
import groundbass.web.view.Reader;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;

/** Rendered pages that do not depend on who reads them. The longest unread goes first. Thread-safe. */
final class KeptPages {
    private static final int MOST = 500;

    /** All that such a page depends on; {@code version} stands for its content. */
    record Key(String template, String version, Frame frame, Reader reader) {}

    private final Map<Key, StoredBytes> pages = new LinkedHashMap<>(16, 0.75f, true) {
        private static final long serialVersionUID = 1L;

        @Override
        protected boolean removeEldestEntry(Map.Entry<Key, StoredBytes> eldest) {
            return size() > MOST;
        }
    };

    /** The page of {@code key}, rendered now if it is not here. Two readers may render it at once; both are right. */
    StoredBytes get(Key key, Supplier<StoredBytes> rendering) {
        return find(key).orElseGet(() -> keep(key, rendering.get()));
    }

    private Optional<StoredBytes> find(Key key) {
        synchronized (pages) {
            return Optional.ofNullable(pages.get(key));
        }
    }

    private StoredBytes keep(Key key, StoredBytes page) {
        synchronized (pages) {
            pages.put(key, page);
        }
        return page;
    }
}
