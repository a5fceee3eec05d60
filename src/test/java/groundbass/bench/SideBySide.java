package groundbass.bench;

import static groundbass.bench.Timing.print;

import io.zonky.test.db.postgres.embedded.EmbeddedPostgres;
import java.io.IOException;
import java.net.URI;
import java.net.URLEncoder;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.concurrent.locks.LockSupport;
import java.util.regex.Pattern;

/**
 * An earlier version's server and one of this version on one PostgreSQL and one object store, as while a site is brought
 * up to date one server after another: what both answer, keep and record alike. Ends with status 1 where they do not.
 * Arguments: the jars of the earlier and of this version.
 */
final class SideBySide {
    private static final String LESSON = "/series/harbour-rounds/1";
    private static final Pattern ENTRY = Pattern.compile("sign in with\\s+(\\S+@\\S+)\\s+(\\S+)");
    private static final Duration LOADED_WITHIN = Duration.ofMinutes(20);

    private final HttpClient client = HttpClient.newHttpClient();
    private final EmbeddedPostgres postgres;
    private final List<String> shared = TrialSite.objectStore();
    private final Path folder;
    private boolean whole = true;

    private record Server(Child process, URI address, Path log) {
        String said() throws IOException {
            return Files.readString(log);
        }
    }

    private SideBySide(EmbeddedPostgres postgres, Path folder) {
        this.postgres = postgres;
        this.folder = folder;
    }

    public static void main(String[] args) throws Exception {
        var folder = Files.createTempDirectory("side-by-side");
        try (var postgres = EmbeddedPostgres.start()) {
            var trial = new SideBySide(postgres, folder);
            trial.run(Path.of(args[0]), Path.of(args[1]));
            System.exit(trial.whole ? 0 : 1);
        } finally {
            Scratch.delete(folder);
        }
    }

    private void run(Path earlierJar, Path laterJar) throws Exception {
        var earlier = started("earlier", earlierJar);
        awaitLoaded(earlier);
        var offer = Offer.of(earlier.address, LESSON);
        String session = signIn(earlier);
        int before = recorded(0);
        var later = started("later", laterJar);
        check("the page of a lesson", status(earlier, LESSON) == 200 && status(later, LESSON) == 200);
        for (String file : offer.files()) {
            check(file, Arrays.equals(bytes(earlier, file), bytes(later, file)));
        }
        passTracks(earlier, later, offer);
        check(
                "a sign-in at the earlier one holds at both",
                isAtTheDesk(earlier, session) && isAtTheDesk(later, session));
        String other = signIn(later);
        check("one at the later one as well", isAtTheDesk(earlier, other) && isAtTheDesk(later, other));
        int asked = 2 * offer.files().size() + 4;
        int recorded = recorded(before + asked) - before;
        check("downloads recorded: " + recorded + " of " + asked, recorded == asked);
        earlier.process.close();
        check("the later one goes on alone", status(later, LESSON) == 200 && isAtTheDesk(later, session));
        var again = serve("again", earlierJar);
        check("the earlier one does not start any more", again.process.status() != 0);
        print("%s", again.said().strip());
        print("faults in the logs: %d and %d", faults(earlier), faults(later));
        whole &= faults(earlier) + faults(later) == 0;
        later.process.close();
    }

    /** A track that one of them made is the other's too. */
    private void passTracks(Server earlier, Server later, Offer offer) throws Exception {
        String release = offer.file(".pdf").replaceFirst("[^/]+$", "");
        String ofEarlier = release + "bass-61.mp3";
        String ofLater = release + "bass-62.mp3";
        check("a track made by the earlier one", Arrays.equals(bytes(earlier, ofEarlier), bytes(later, ofEarlier)));
        check("a track made by the later one", Arrays.equals(bytes(later, ofLater), bytes(earlier, ofLater)));
    }

    private void check(String what, boolean holds) {
        print("%-5s %s", holds ? "yes" : "NO", what);
        whole &= holds;
    }

    private Server started(String name, Path jar) throws IOException {
        var server = serve(name, jar);
        Probe.waitFor(server.address.resolve("/"), (int) LOADED_WITHIN.toSeconds());
        return server;
    }

    private Server serve(String name, Path jar) throws IOException {
        int port = Probe.freePort();
        var command = new ArrayList<>(List.of(
                Path.of(System.getProperty("java.home"), "bin", "java").toString(),
                "-Xmx256m",
                "-jar",
                jar.toString(),
                "serve",
                "--demo",
                "--port",
                Integer.toString(port),
                "--data",
                Files.createDirectories(folder.resolve("data-" + name)).toString(),
                "--database-url",
                postgres.getJdbcUrl("postgres", "postgres"),
                "--database-user",
                "postgres"));
        command.addAll(shared);
        var log = folder.resolve(name);
        return new Server(
                Child.start(log, TrialSite.environment(shared), command), URI.create("http://localhost:" + port), log);
    }

    private void awaitLoaded(Server server) throws Exception {
        long end = System.nanoTime() + LOADED_WITHIN.toNanos();
        while (!server.said().contains("the demo series is loaded")
                || count("select count(*) from release where state <> 'ready'") > 0) {
            if (!server.process.isAlive() || System.nanoTime() > end) {
                throw new IllegalStateException(server.said());
            }
            LockSupport.parkNanos(Duration.ofMillis(500).toNanos());
        }
    }

    private String signIn(Server server) throws Exception {
        var entry = ENTRY.matcher(Files.readString(folder.resolve("earlier")));
        if (!entry.find()) {
            throw new IllegalStateException("no way into the desk is told");
        }
        String form = "email=" + encoded(entry.group(1)) + "&password=" + encoded(entry.group(2));
        var request = HttpRequest.newBuilder(server.address.resolve("/desk/sign-in"))
                .header("Content-Type", "application/x-www-form-urlencoded")
                .header("Origin", server.address.toString())
                .POST(BodyPublishers.ofString(form))
                .build();
        return client.send(request, BodyHandlers.discarding()).headers().allValues("Set-Cookie").stream()
                .map(cookie -> cookie.replaceFirst(";.*", ""))
                .filter(cookie -> cookie.startsWith("session="))
                .findFirst()
                .orElseThrow();
    }

    private static String encoded(String text) {
        return URLEncoder.encode(text, StandardCharsets.UTF_8);
    }

    private boolean isAtTheDesk(Server server, String session) throws Exception {
        return send(server, "/desk", Map.of("Cookie", session)).statusCode() == 200;
    }

    private int status(Server server, String path) throws Exception {
        return send(server, path, Map.of()).statusCode();
    }

    private byte[] bytes(Server server, String path) throws Exception {
        var answer = send(server, path, Map.of());
        if (answer.statusCode() != 200) {
            check(path + " answers " + answer.statusCode(), false);
        }
        return answer.body();
    }

    private HttpResponse<byte[]> send(Server server, String path, Map<String, String> headers) throws Exception {
        var request = HttpRequest.newBuilder(server.address.resolve(path)).header("User-Agent", "side by side");
        headers.forEach(request::header);
        return client.send(request.build(), BodyHandlers.ofByteArray());
    }

    /** How many are recorded as whole, once all are that were asked for, or after a while. */
    private int recorded(int all) throws Exception {
        long end = System.nanoTime() + Duration.ofSeconds(20).toNanos();
        int found;
        do {
            found = count("select count(*) from download where state = 'complete'");
            LockSupport.parkNanos(Duration.ofMillis(100).toNanos());
        } while (found < all && System.nanoTime() < end);
        return found;
    }

    private int count(String query) throws Exception {
        try (var connection = postgres.getPostgresDatabase().getConnection();
                var row = connection.createStatement().executeQuery(query)) {
            row.next();
            return row.getInt(1);
        }
    }

    private static long faults(Server server) throws IOException {
        return server.said().lines().filter(line -> line.contains(" ERROR ")).count();
    }
}
