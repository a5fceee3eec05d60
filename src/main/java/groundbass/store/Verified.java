package groundbass.store;

import groundbass.identity.Sha256;
import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.BasicFileAttributes;
import java.nio.file.attribute.FileTime;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;

/**
 * Which stored files were found to be what their digests say since the program started, with the length and the time of
 * last change that they had then: a file that has others by now is read again. Thread-safe.
 */
final class Verified {
    private static final int MOST = 20_000;
    private static final int BUFFER = 1 << 16;

    private record State(long length, FileTime changed) {
        static State of(Path file) throws IOException {
            var attributes = Files.readAttributes(file, BasicFileAttributes.class);
            return new State(attributes.size(), attributes.lastModifiedTime());
        }
    }

    private final Map<Sha256, State> states = new LinkedHashMap<>(16, 0.75f, true) {
        private static final long serialVersionUID = 1L;

        @Override
        protected boolean removeEldestEntry(Map.Entry<Sha256, State> eldest) {
            return size() > MOST;
        }
    };

    /** The file is good as it stands: we have just written it. */
    void add(Path file, Sha256 sha256) throws IOException {
        put(sha256, State.of(file));
    }

    /** We change nothing but its time. */
    void touch(Path file, Sha256 sha256, Instant now) throws IOException {
        boolean good = before(sha256).filter(State.of(file)::equals).isPresent();
        Files.setLastModifiedTime(file, FileTime.from(now));
        if (good) {
            add(file, sha256);
        } else {
            forget(sha256); // somebody else has written there; the next reader looks
        }
    }

    void forget(Sha256 sha256) {
        synchronized (states) {
            states.remove(sha256);
        }
    }

    /** Reads the whole file where that was not done before. @throws java.nio.file.NoSuchFileException where it is gone */
    boolean isGood(Path file, Sha256 sha256) throws IOException {
        var now = State.of(file);
        if (before(sha256).filter(now::equals).isPresent()) {
            return true;
        }
        boolean good = digest(file).equals(sha256);
        if (good) {
            put(sha256, now);
        }
        return good;
    }

    private Optional<State> before(Sha256 sha256) {
        synchronized (states) {
            return Optional.ofNullable(states.get(sha256));
        }
    }

    private void put(Sha256 sha256, State state) {
        synchronized (states) {
            states.put(sha256, state);
        }
    }

    private static Sha256 digest(Path file) throws IOException {
        var digest = Sha256.digest();
        byte[] buffer = new byte[BUFFER];
        try (InputStream in = Files.newInputStream(file)) {
            for (int n = in.read(buffer); n >= 0; n = in.read(buffer)) {
                digest.update(buffer, 0, n);
            }
        }
        return Sha256.finish(digest);
    }
}
