package groundbass.bench;

import groundbass.store.Database;
import io.zonky.test.db.postgres.embedded.EmbeddedPostgres;
import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStream;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.util.Arrays;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.locks.LockSupport;

/**
 * The pages that grow with a site, on all that {@link BigSite} invents, in a heap of 256 MiB: how long each takes the
 * first time and then (median of {@value #ROUNDS}), in wall time and in processor time of the server. Arguments: {@code
 * h2} or {@code postgres} and, where it is not {@value #DOWNLOADS}, how many downloads there are.
 */
final class BigSiteBench {
    private static final int ROUNDS = 10;
    /** Before that, so that what is measured is compiled. */
    private static final int WARM = 20;

    private static final String DOWNLOADS = "1000000";
    private static final Duration FILLED_WITHIN = Duration.ofMinutes(30);
    private static final Duration PATIENCE = Duration.ofMinutes(3);

    private static final List<String> PATHS = List.of(
            "/",
            "/series/long-series",
            "/series/long-series?page=10",
            "/lessons",
            "/lessons?page=30",
            "/lessons?q=bakiba",
            "/lessons?q=ba+lesson+1",
            "/lessons?technique=slap&key=Em&slowest=60&fastest=120&order=tempo",
            "/desk",
            "/desk/statistics",
            "/desk/statistics?page=10",
            "/desk/statistics/series/SERIES",
            "/desk/statistics/episodes/LESSON",
            "/desk/statistics/students",
            "/desk/statistics/students?page=50",
            "/desk/statistics/episodes.csv",
            "/desk/statistics/students.csv",
            "/healthz");

    private final HttpClient client = HttpClient.newHttpClient();
    private final Child server;
    private final URI address;
    private final String session;

    private BigSiteBench(Child server, URI address, String session) {
        this.server = server;
        this.address = address;
        this.session = session;
    }

    public static void main(String[] args) throws Exception {
        var folder = Files.createTempDirectory("big-site");
        String downloads = args.length > 1 ? args[1] : DOWNLOADS;
        try {
            if (args[0].equals("postgres")) {
                try (var postgres = EmbeddedPostgres.start()) {
                    run(folder, downloads, postgres.getJdbcUrl("postgres", "postgres"));
                }
            } else {
                run(folder, downloads);
            }
        } finally {
            Scratch.delete(folder);
        }
    }

    /** @param site how many downloads it has, and where its database is, if it is not the embedded one */
    private static void run(Path folder, String... site) throws Exception {
        int port = Probe.freePort();
        var log = folder.resolve("log");
        var arguments = new String[2 + site.length];
        arguments[0] = folder.toString();
        arguments[1] = Integer.toString(port);
        System.arraycopy(site, 0, arguments, 2, site.length);
        long begun = System.nanoTime();
        fill(folder, site);
        try (var server = Child.java(log, BigSiteServer.class, arguments)) {
            var session = session(folder, server, log);
            print("%s downloads filled and summed up in %.0f s", site[0], (System.nanoTime() - begun) / 1e9);
            var bench = new BigSiteBench(server, URI.create("http://localhost:" + port), session.get(0));
            print("%-36s %8s %9s %9s %9s %10s", "", "status", "first ms", "then ms", "cpu ms", "bytes");
            for (String path : PATHS) {
                bench.measure(path.replace("SERIES", session.get(1)).replace("LESSON", session.get(2)));
            }
            server.mostMemory().ifPresent(mib -> print("most memory of the server: %d MiB", mib));
        }
    }

    /** In this process, whose heap is as large as it likes: filling is not what is measured. */
    private static void fill(Path folder, String... site) {
        int downloads = Integer.parseInt(site[0]);
        try (var database = site.length > 1 ? Database.open(site[1], "postgres", "") : Database.embedded(folder)) {
            BigSite.fill(database, Clock.systemUTC(), downloads);
        }
    }

    private static List<String> session(Path folder, Child server, Path log) throws IOException {
        var file = folder.resolve("session");
        long end = System.nanoTime() + FILLED_WITHIN.toNanos();
        while (!Files.exists(file)) {
            if (!server.isAlive() || System.nanoTime() > end) {
                throw new IllegalStateException(Files.readString(log));
            }
            LockSupport.parkNanos(Duration.ofMillis(100).toNanos());
        }
        return Files.readAllLines(file);
    }

    private void measure(String path) throws Exception {
        var first = get(path);
        for (int i = 0; i < WARM; i++) {
            get(path);
        }
        long cpu = server.cpuMicros();
        var then = new double[ROUNDS];
        for (int i = 0; i < ROUNDS; i++) {
            then[i] = get(path).millis();
        }
        Arrays.sort(then);
        print(
                "%-36s %8d %9.0f %9.0f %9d %10d",
                path,
                first.status(),
                first.millis(),
                then[ROUNDS / 2],
                (server.cpuMicros() - cpu) / 1000 / ROUNDS,
                first.bytes());
    }

    private record Answer(int status, double millis, long bytes) {}

    private Answer get(String path) throws Exception {
        var request = HttpRequest.newBuilder(address.resolve(path))
                .header("Cookie", "session=" + session)
                .header("Accept", "text/html")
                .timeout(PATIENCE)
                .build();
        long start = System.nanoTime();
        var answer = client.send(request, HttpResponse.BodyHandlers.ofInputStream());
        try (InputStream body = answer.body()) {
            long bytes = body.transferTo(OutputStream.nullOutputStream());
            return new Answer(answer.statusCode(), (System.nanoTime() - start) / 1e6, bytes);
        }
    }

    private static void print(String format, Object... parameters) {
        System.out.printf(Locale.ROOT, format + "%n", parameters);
    }
}
