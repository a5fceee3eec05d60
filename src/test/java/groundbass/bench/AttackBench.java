package groundbass.bench;

import static groundbass.bench.Timing.print;

import java.io.IOException;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;
import java.util.regex.Pattern;

/**
 * A server with a heap of 256 MiB, attacked in every way that is known here for some minutes, all at once, on the
 * loopback interface; meanwhile three pages are opened once a second, as they were in a calm minute before, which is the
 * anchor. It ends by itself, and the server with it. What should be seen: pages come, no error of memory, and the server
 * answers as before when it is over.
 */
final class AttackBench {
    private static final int LOADED_WITHIN = 900;
    private static final Pattern LARGE_FILE = Pattern.compile("/files/[a-z0-9]{16}/[^\"]+\\.(zip|wav|mp3|flac|pdf)");

    private AttackBench() {}

    public static void main(String[] args) throws Exception {
        int minutes = args.length > 0 ? Integer.parseInt(args[0]) : 10;
        var log = Files.createTempFile("attack", ".log");
        int port = Probe.freePort();
        try (var server = serve(log, port)) {
            Probe.waitFor(at(port, "/healthz"), LOADED_WITHIN);
            Probe.waitFor(at(port, lesson(port)), LOADED_WITHIN);
            print("calm");
            watch(server, port, List.of(), TimeUnit.MINUTES.toNanos(1));
            print("attacked");
            watch(server, port, attackers(port), TimeUnit.MINUTES.toNanos(minutes));
            print(
                    "alive %s, most memory %s MiB",
                    server.isAlive(), server.mostMemory().orElse(-1L));
            print("first page afterwards after %d ms", Probe.waitFor(at(port, "/"), LOADED_WITHIN));
        }
        print(
                "lines in the log with ERROR %d, with OutOfMemoryError %d; %s",
                lines(log, "ERROR"), lines(log, "OutOfMemoryError"), log);
    }

    private static Child serve(Path log, int port) throws IOException {
        return Child.java(
                log,
                "groundbass.Main",
                "serve",
                "--demo",
                "--behind-proxy",
                "--data",
                Scratch.SITE.toString(),
                "--port",
                Integer.toString(port));
    }

    private static List<Attacker> attackers(int port) throws IOException {
        String lesson = lesson(port);
        return new Attacks(port, lesson, file(port, lesson)).all();
    }

    private static void watch(Child server, int port, List<Attacker> attackers, long nanos) throws IOException {
        long end = System.nanoTime() + nanos;
        var watches = List.of("/healthz", "/", lesson(port)).stream()
                .map(path -> new Watch(at(port, path)))
                .toList();
        watches.forEach(watch -> watch.start(end));
        attackers.forEach(attacker -> attacker.start(end));
        while (System.nanoTime() < end && server.isAlive()) {
            LockSupport.parkNanos(TimeUnit.MILLISECONDS.toNanos(200));
        }
        attackers.forEach(attacker -> print("%s", attacker.told()));
        watches.forEach(watch -> print("%s", watch.told()));
    }

    /** A lesson that is out, as the front page links it. */
    private static String lesson(int port) throws IOException {
        for (int tries = 0; tries < LOADED_WITHIN; tries++) {
            var found = Pattern.compile("/series/[a-z0-9-]+/[1-9]").matcher(text(at(port, "/")));
            if (found.find()) {
                return found.group();
            }
            LockSupport.parkNanos(TimeUnit.SECONDS.toNanos(1));
        }
        throw new IllegalStateException("no lesson is out");
    }

    private static String file(int port, String lesson) throws IOException {
        var found = LARGE_FILE.matcher(text(at(port, lesson)));
        if (!found.find()) {
            throw new IllegalStateException("no file on " + lesson);
        }
        return found.group();
    }

    private static String text(URI page) throws IOException {
        var connection = page.toURL().openConnection();
        connection.setRequestProperty("Accept", "text/html");
        try (var in = connection.getInputStream()) {
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        }
    }

    private static URI at(int port, String path) {
        return URI.create("http://localhost:" + port + path);
    }

    private static long lines(Path log, String word) throws IOException {
        try (var lines = Files.lines(log)) {
            return lines.filter(line -> line.contains(word)).count();
        }
    }
}
