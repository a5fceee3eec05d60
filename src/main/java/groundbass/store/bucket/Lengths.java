package groundbass.store.bucket;

import groundbass.identity.Sha256;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.OptionalLong;

/** How long the files are that the store was lately found to have: a stored file never changes. Thread-safe. */
final class Lengths {
    private static final int MOST = 20_000;

    private final Map<Sha256, Long> known = new LinkedHashMap<>(16, 0.75f, true) {
        private static final long serialVersionUID = 1L;

        @Override
        protected boolean removeEldestEntry(Map.Entry<Sha256, Long> eldest) {
            return size() > MOST;
        }
    };

    synchronized OptionalLong of(Sha256 sha256) {
        var length = known.get(sha256);
        return length == null ? OptionalLong.empty() : OptionalLong.of(length);
    }

    synchronized void put(Sha256 sha256, long length) {
        known.put(sha256, length);
    }

    synchronized void forget(Sha256 sha256) {
        known.remove(sha256);
    }
}
