package groundbass.bench;

import static groundbass.bench.Timing.print;

import groundbass.store.Database;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.concurrent.locks.LockSupport;

/**
 * A file of 200 KB, each download recorded, beside our web server that does nothing but send as many bytes from memory,
 * and beside nginx with sendfile; and whether there are as many records as downloads. The server runs in a process of its own with a heap of 256 MiB.
 */
final class DownloadBench {
    private static final int LOADED_WITHIN = 300;
    private static final int COUNTED_SECONDS = 5;
    private static final String COMPLETE = " and state = 'complete'";

    private DownloadBench() {}

    public static void main(String[] args) throws Exception {
        int seconds = args.length > 0 ? Integer.parseInt(args[0]) : 10;
        var folder = Files.createTempDirectory("download-bench");
        try {
            count(Scratch.SITE);
            compare(folder, seconds);
        } finally {
            Scratch.delete(folder);
        }
    }

    private static void count(Path data) throws Exception {
        Load.Result taken;
        long before = Files.exists(data) ? records(data, "") : 0;
        long completeBefore = Files.exists(data) ? records(data, COMPLETE) : 0;
        try (var server = serve(data, Probe.freePort())) {
            taken = Sockets.run(server.file(), COUNTED_SECONDS);
            print("own sockets            %s", taken);
        }
        print(
                "acknowledged %d, recorded %d, of them complete %d",
                taken.answered(), records(data, "") - before, records(data, COMPLETE) - completeBefore);
    }

    private static void compare(Path folder, int seconds) throws Exception {
        if (!Nginx.isHere()) {
            print("no nginx here to compare with");
            return;
        }
        int port = Probe.freePort();
        int memoryPort = Probe.freePort();
        try (var server = serve(Scratch.SITE, Probe.freePort());
                var memory =
                        Child.java(folder.resolve("memory.log"), ConstantServer.class, Integer.toString(memoryPort));
                var nginx = Nginx.start(Files.createDirectories(folder.resolve("nginx")), port, DownloadServer.SIZE)) {
            var anchor = URI.create("http://127.0.0.1:" + port + "/bench.bin");
            Probe.waitFor(anchor, COUNTED_SECONDS);
            var floor = URI.create("http://127.0.0.1:" + memoryPort + ConstantServer.FILE);
            Probe.waitFor(floor, COUNTED_SECONDS);
            Load.compare(
                    new Load.Side("recorded download", server.file(), server.child()),
                    List.of(
                            new Load.Side("from memory", floor, memory),
                            new Load.Side("nginx, sendfile", anchor, nginx)),
                    3,
                    seconds);
            print("aim: ratio at least 0.5 (later 0.7)");
            server.child()
                    .mostMemory()
                    .ifPresent(mib -> print("most memory of the server: %d MiB, heap within 256", mib));
            nginx.mostMemory().ifPresent(mib -> print("most memory of nginx: %d MiB", mib));
        }
    }

    /** A server that is ready, and the file that it offers. */
    private record Server(Child child, URI file) implements AutoCloseable {
        @Override
        public void close() {
            child.close();
        }
    }

    private static Server serve(Path data, int port) throws Exception {
        Files.createDirectories(data);
        var path = data.resolve("path");
        Files.deleteIfExists(path);
        var child = Child.java(data.resolve("log"), DownloadServer.class, data.toString(), Integer.toString(port));
        long end = System.nanoTime() + Duration.ofSeconds(LOADED_WITHIN).toNanos();
        while (!Files.exists(path)) {
            if (!child.isAlive() || System.nanoTime() > end) {
                child.close();
                throw new IllegalStateException(Files.readString(data.resolve("log")));
            }
            LockSupport.parkNanos(Duration.ofMillis(100).toNanos());
        }
        return new Server(child, URI.create("http://127.0.0.1:" + port + Files.readString(path)));
    }

    private static long records(Path data, String which) {
        try (var database = Database.embedded(data)) {
            return database.jdbi().withHandle(handle -> handle.createQuery(
                            "select count(*) from download where file_name = :name and not robot" + which)
                    .bind("name", DownloadServer.NAME)
                    .mapTo(Long.class)
                    .one());
        }
    }
}
