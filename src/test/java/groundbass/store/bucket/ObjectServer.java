package groundbass.store.bucket;

import groundbass.store.RandomId;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.ServerSocket;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Locale;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import software.amazon.awssdk.services.s3.S3Client;

/**
 * A server that speaks the S3 protocol, as a process of its own: one for all tests of a process, started when the first
 * asks for it. What it keeps is gone with it.
 */
public final class ObjectServer {
    private static final String PROGRAM = "s3mock-";
    private static final int SECONDS_TO_START = 180; // it starts a whole program
    private static final String STARTED = "Started S3MockApplication";

    private final Relay relay;
    private final S3Client client;

    private ObjectServer(Relay relay, S3Client client) {
        this.relay = relay;
        this.client = client;
    }

    public static ObjectServer get() {
        return Running.SERVER;
    }

    /** A bucket that nobody else uses. */
    public BucketName freshBucket() {
        String name = "bucket-" + RandomId.next().toLowerCase(Locale.ROOT);
        client.createBucket(request -> request.bucket(name));
        return new BucketName(name, "site/");
    }

    /** To do what the program would not. */
    public S3Client client() {
        return client;
    }

    /** By which every client of this process reaches it. */
    public Relay relay() {
        return relay;
    }

    private static final class Running {
        static final ObjectServer SERVER = start();
    }

    private static ObjectServer start() {
        try {
            int port = freePort();
            var process = new ProcessBuilder(
                            Path.of(System.getProperty("java.home"), "bin", "java")
                                    .toString(),
                            "-Xmx96m",
                            "-XX:TieredStopAtLevel=1",
                            "-XX:+UseSerialGC",
                            "-jar",
                            program(),
                            "--com.adobe.testing.s3mock.httpPort=" + port,
                            "--server.port=0")
                    .redirectErrorStream(true)
                    .start();
            Runtime.getRuntime().addShutdownHook(new Thread(process::destroy));
            await(process);
            // where the client of the program looks as well; the server takes any key
            var relay = new Relay(port);
            System.setProperty("aws.endpointUrl", "http://localhost:" + relay.port());
            System.setProperty("aws.region", "eu-central-1");
            System.setProperty("aws.accessKeyId", "trial");
            System.setProperty("aws.secretAccessKey", "of no use elsewhere");
            return new ObjectServer(
                    relay, S3Client.builder().forcePathStyle(true).build());
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** It comes as a library of the tests that holds all of its own libraries inside. */
    private static String program() {
        return Arrays.stream(System.getProperty("java.class.path").split(System.getProperty("path.separator")))
                .filter(jar -> Path.of(jar).getFileName().toString().startsWith(PROGRAM))
                .findFirst()
                .orElseThrow();
    }

    private static int freePort() throws IOException {
        try (var socket = new ServerSocket(0)) {
            return socket.getLocalPort();
        }
    }

    /** It says so when it listens; what it says later is read away, since a process that nobody reads stands still. */
    private static void await(Process process) {
        var listens = new CompletableFuture<Void>();
        var reading = new Thread(
                () -> {
                    try (var said = process.inputReader()) {
                        said.lines().filter(line -> line.contains(STARTED)).forEach(line -> listens.complete(null));
                    } catch (IOException | UncheckedIOException e) {
                        listens.completeExceptionally(e);
                    }
                    listens.completeExceptionally(new IOException("it has ended"));
                },
                "object server");
        reading.setDaemon(true);
        reading.start();
        try {
            listens.get(SECONDS_TO_START, TimeUnit.SECONDS);
        } catch (InterruptedException | ExecutionException | TimeoutException e) {
            throw new IllegalStateException("the object server has not started", e);
        }
    }
}
