package groundbass.bench;

import groundbass.store.bucket.ObjectServer;
import io.zonky.test.db.postgres.embedded.EmbeddedPostgres;
import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.locks.LockSupport;
import java.util.stream.Stream;

/**
 * The demonstration as {@code serve} runs it, behind a front server that is played by its visitors: one process with the
 * embedded database, one with a PostgreSQL, or two with a PostgreSQL and an object store.
 */
final class TrialSite implements AutoCloseable {
    /** An option in a line. */
    private static final Path OPTIONS = Path.of("src", "build", "options");

    private static final String MAIN = "groundbass.Main";
    private static final String TOKEN = "of-no-use-elsewhere-0123456789";
    private static final int LINES = 20;
    private static final Duration LOADED_WITHIN = Duration.ofMinutes(20);

    private final List<Child> servers = new ArrayList<>();
    private final List<URI> addresses = new ArrayList<>();
    private final Path folder;
    private final Optional<EmbeddedPostgres> postgres;
    private final boolean fresh = !Files.exists(Scratch.SITE);

    enum Kind {
        H2,
        POSTGRES,
        TWO
    }

    private TrialSite(Path folder, Optional<EmbeddedPostgres> postgres) {
        this.folder = folder;
        this.postgres = postgres;
    }

    /** A site whose first server answers; a second one is started once the demonstration is loaded. */
    static TrialSite open(Kind kind, Path folder) throws Exception {
        // the library of the tests switches it off; a site is run with what the server does by itself
        var postgres = kind == Kind.H2
                ? Optional.<EmbeddedPostgres>empty()
                : Optional.of(EmbeddedPostgres.builder()
                        .setServerConfig("synchronous_commit", "on")
                        .start());
        var site = new TrialSite(folder, postgres);
        var shared = kind == Kind.TWO ? objectStore() : List.<String>of();
        if (postgres.isPresent()) {
            site.restore(shared);
        }
        site.serve(shared);
        if (kind == Kind.TWO) {
            site.awaitLoaded();
            site.serve(shared);
        }
        return site;
    }

    /** The demonstration as it lies with the embedded database, where it has been loaded before: to make it takes minutes. */
    private void restore(List<String> shared) throws IOException {
        if (fresh) {
            return;
        }
        String file = folder.resolve("site.zip").toString();
        run(List.of("admin", "backup", file, "--data", Scratch.SITE.toString()), Map.of());
        var arguments = new ArrayList<>(List.of("admin", "restore", file));
        arguments.addAll(List.of("--data", data(0).toString()));
        arguments.addAll(database());
        shared.stream().limit(2).forEach(arguments::add); // where the files are
        run(arguments, environment(shared));
    }

    private void run(List<String> arguments, Map<String, String> environment) throws IOException {
        var log = folder.resolve("log-" + arguments.get(1));
        try (var program =
                Child.java(log, Files.readAllLines(OPTIONS), environment, MAIN, arguments.toArray(String[]::new))) {
            program.await();
        }
    }

    private List<String> database() {
        return postgres.map(server -> List.of(
                        "--database-url", server.getJdbcUrl("postgres", "postgres"), "--database-user", "postgres"))
                .orElse(List.of());
    }

    // with the embedded database it is the one that other benchmarks have loaded, or will find loaded
    private Path data(int server) throws IOException {
        return Files.createDirectories(postgres.isPresent() ? folder.resolve("server" + server) : Scratch.SITE);
    }

    static List<String> objectStore() {
        var bucket = ObjectServer.get().freshBucket();
        return List.of("--files", bucket.toString(), "--public-address", "http://localhost");
    }

    /** Where {@link ObjectServer} has told this process its object store. */
    static Map<String, String> environment(List<String> shared) {
        if (shared.isEmpty()) {
            return Map.of();
        }
        return Map.of(
                "AWS_ENDPOINT_URL", System.getProperty("aws.endpointUrl", ""),
                "AWS_REGION", System.getProperty("aws.region", ""),
                "AWS_ACCESS_KEY_ID", System.getProperty("aws.accessKeyId", ""),
                "AWS_SECRET_ACCESS_KEY", System.getProperty("aws.secretAccessKey", ""));
    }

    private void serve(List<String> shared) throws IOException {
        int port = Probe.freePort();
        var arguments = new ArrayList<>(List.of("serve", "--demo", "--behind-proxy"));
        arguments.addAll(List.of("--data", data(servers.size()).toString()));
        arguments.addAll(List.of("--port", Integer.toString(port), "--metrics-token", TOKEN));
        arguments.addAll(database());
        arguments.addAll(shared);
        servers.add(Child.java(
                folder.resolve("log" + servers.size()),
                Files.readAllLines(OPTIONS),
                environment(shared),
                MAIN,
                arguments.toArray(String[]::new)));
        addresses.add(URI.create("http://127.0.0.1:" + port));
        Probe.waitFor(addresses.get(addresses.size() - 1).resolve("/"), (int) LOADED_WITHIN.toSeconds());
    }

    /** Until the demonstration is whole: its log says that all lessons are there, and no file is still being made. */
    void awaitLoaded() throws IOException, InterruptedException {
        long end = System.nanoTime() + LOADED_WITHIN.toNanos();
        while (!isLoaded()) {
            if (!servers.get(0).isAlive() || System.nanoTime() > end) {
                throw new IllegalStateException(Files.readString(folder.resolve("log0")));
            }
            LockSupport.parkNanos(Duration.ofMillis(500).toNanos());
        }
    }

    private boolean isLoaded() throws IOException, InterruptedException {
        return Files.readString(folder.resolve("log0")).contains("the demo series is loaded")
                && metrics().lines().anyMatch("groundbass_releases_unfinished 0.0"::equals);
    }

    private String metrics() throws IOException, InterruptedException {
        var request = HttpRequest.newBuilder(addresses.get(0).resolve("/metrics"))
                .header("Authorization", "Bearer " + TOKEN)
                .build();
        return HttpClient.newHttpClient()
                .send(request, HttpResponse.BodyHandlers.ofString())
                .body();
    }

    /** Whether its lessons are made only now. */
    boolean isFresh() {
        return fresh;
    }

    List<URI> addresses() {
        return addresses;
    }

    List<Child> servers() {
        return servers;
    }

    /** What each server has said last. */
    String log() throws IOException {
        var said = new StringBuilder();
        for (int i = 0; i < servers.size(); i++) {
            var lines = Files.readAllLines(folder.resolve("log" + i));
            said.append(servers.get(i).isAlive() ? "" : "ended: ")
                    .append(String.join("\n", lines.subList(Math.max(0, lines.size() - LINES), lines.size())))
                    .append('\n');
        }
        return said.toString();
    }

    /** Of all servers of the program, in microseconds. */
    long cpuMicros() {
        return servers.stream().mapToLong(Child::cpuMicros).sum();
    }

    /** Of the database server, where there is one, likewise: its first process and those that it has started. */
    long databaseMicros() {
        return postgres.stream()
                .flatMap(TrialSite::processes)
                .mapToLong(process ->
                        process.info().totalCpuDuration().orElse(Duration.ZERO).toNanos() / 1000)
                .sum();
    }

    /** It runs as a child of this program; other children of this program are our own servers. */
    private static Stream<ProcessHandle> processes(EmbeddedPostgres server) {
        return ProcessHandle.allProcesses()
                .filter(process -> process.info().command().orElse("").endsWith("/postgres"))
                .filter(process -> process.info().commandLine().orElse("").contains(Integer.toString(server.getPort()))
                        || process.parent()
                                .filter(parent -> parent.info()
                                        .commandLine()
                                        .orElse("")
                                        .contains(Integer.toString(server.getPort())))
                                .isPresent());
    }

    @Override
    public void close() throws IOException {
        servers.forEach(Child::close);
        if (postgres.isPresent()) {
            postgres.get().close();
        }
    }
}
