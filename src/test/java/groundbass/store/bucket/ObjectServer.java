package groundbass.store.bucket;

import groundbass.store.RandomId;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.ServerSocket;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Locale;
import java.util.concurrent.TimeUnit;
import software.amazon.awssdk.services.s3.S3Client;

/**
 * A server that speaks the S3 protocol, as a process of its own: one for all tests of a process, started when the first
 * asks for it. What it keeps is gone with it.
 */
public final class ObjectServer {
    private static final String PROGRAM = "s3mock-";
    private static final int SECONDS_TO_START = 60;
    private static final int MILLIS_BETWEEN_LOOKS = 50;

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
                    .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                    .start();
            Runtime.getRuntime().addShutdownHook(new Thread(process::destroy));
            await(process, port);
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

    private static void await(Process process, int port) {
        var http = HttpClient.newHttpClient();
        var request = HttpRequest.newBuilder(URI.create("http://localhost:" + port + "/favicon.ico"))
                .build();
        long end = System.nanoTime() + TimeUnit.SECONDS.toNanos(SECONDS_TO_START);
        while (process.isAlive() && System.nanoTime() < end) {
            try {
                http.send(request, HttpResponse.BodyHandlers.discarding());
                return;
            } catch (IOException e) {
                pause();
            } catch (InterruptedException e) {
                throw new IllegalStateException(e);
            }
        }
        throw new IllegalStateException("the object server has not started");
    }

    private static void pause() {
        try {
            Thread.sleep(MILLIS_BETWEEN_LOOKS); // another process starts; there is nothing to wait for but time
        } catch (InterruptedException e) {
            throw new IllegalStateException(e);
        }
    }
}
