package groundbass.bench;

import static groundbass.bench.Timing.print;

import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;

/**
 * How soon the first page comes, and the episode page beside a constant string, each from a process of its own with a
 * heap of 256 MiB and in turns, so that both see the same machine.
 */
final class PageBench {
    private static final int STARTS = 3;
    private static final int LOADED_WITHIN = 300;

    private PageBench() {}

    public static void main(String[] args) throws Exception {
        int seconds = args.length > 0 ? Integer.parseInt(args[0]) : 10;
        var folder = Files.createTempDirectory("page-bench");
        try {
            starts(folder);
            pages(folder, seconds);
        } finally {
            Scratch.delete(folder);
        }
    }

    /** Each on a folder of its own, as on a fresh machine, and in turns with a server that can do nothing. */
    private static void starts(Path folder) throws Exception {
        var ours = new double[STARTS];
        var anchor = new double[STARTS];
        for (int i = 0; i < STARTS; i++) {
            int port = Probe.freePort();
            ours[i] = firstPage(serve(folder.resolve("start" + i), port), port);
            int bare = Probe.freePort();
            anchor[i] = firstPage(constant(folder, bare), bare);
        }
        double ratio = Timing.median(ours) / Timing.median(anchor);
        print("start to first page       %7.0f ms   aim 2,500 (median of %d)", Timing.median(ours), STARTS);
        print("constant string           %7.0f ms   ratio %.1f, aim 2.5", Timing.median(anchor), ratio);
    }

    @SuppressWarnings("try") // it is only to be there
    private static long firstPage(Child server, int port) {
        try (server) {
            return Probe.waitFor(home(port), 120);
        }
    }

    private static Child constant(Path folder, int port) throws Exception {
        return Child.java(folder.resolve("anchor.log"), ConstantServer.class, Integer.toString(port));
    }

    private static void pages(Path folder, int seconds) throws Exception {
        int port = Probe.freePort();
        int anchorPort = Probe.freePort();
        try (var server = serve(Scratch.SITE, port);
                var anchor =
                        Child.java(folder.resolve("anchor.log"), ConstantServer.class, Integer.toString(anchorPort))) {
            long loaded = Probe.waitFor(home(port).resolve("/series/harbour-rounds/6"), LOADED_WITHIN);
            print("start to the demo's last episode %d ms", loaded);
            Probe.waitFor(home(anchorPort), 60);
            Load.compare(
                    new Load.Side("episode page", home(port).resolve("/series/harbour-rounds/1"), server),
                    List.of(new Load.Side("constant string", home(anchorPort), anchor)),
                    3,
                    seconds);
            print("aim: ratio at least 0.3 (later 0.5), p99 under 50 ms (later 20)");
            server.mostMemory().ifPresent(mib -> print("most memory of the server: %d MiB, heap within 256", mib));
        }
    }

    private static Child serve(Path data, int port) throws Exception {
        Files.createDirectories(data);
        return Child.java(
                data.resolve("log"),
                "groundbass.Main",
                "serve",
                "--demo",
                "--data",
                data.toString(),
                "--port",
                Integer.toString(port));
    }

    private static URI home(int port) {
        return URI.create("http://127.0.0.1:" + port + "/");
    }
}
