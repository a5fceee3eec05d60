package groundbass.bench;

import java.io.IOException;
import java.net.URI;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.Executors;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.IntStream;

/** The same requests so many times, a few readers at once, each time by a new one. */
final class Round {
    private static final int AT_ONCE = 4;
    private static final int EACH = 400;
    private static final AtomicInteger READERS = new AtomicInteger(1_000_000);

    private final List<URI> servers;
    private final List<String> paths;

    Round(List<URI> servers, List<String> paths) {
        this.servers = servers;
        this.paths = paths;
    }

    record Done(long times, long bytes) {
        private Done and(Done other) {
            return new Done(times + other.times, bytes + other.bytes);
        }
    }

    Done run() throws Exception {
        var readers = Executors.newFixedThreadPool(AT_ONCE);
        try {
            Callable<Done> reading = this::read;
            var all = new Done(0, 0);
            for (var one : readers.invokeAll(
                    IntStream.range(0, AT_ONCE).mapToObj(i -> reading).toList())) {
                all = all.and(one.get());
            }
            return all;
        } finally {
            readers.shutdown();
        }
    }

    private Done read() throws IOException {
        long bytes = 0;
        for (int i = 0; i < EACH; i++) {
            int reader = READERS.incrementAndGet();
            try (var visitor = new Visitor(servers.get(reader % servers.size()), reader)) {
                for (String path : paths) {
                    bytes += visitor.get(path);
                }
            }
        }
        return new Done(EACH, bytes);
    }
}
