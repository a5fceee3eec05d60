package groundbass.web.gate;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.web.Stage;
import groundbass.web.shell.PrincipalResolver;
import groundbass.web.shell.Role;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.Socket;
import java.net.SocketException;
import java.net.SocketTimeoutException;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** Bodies that never come to their end, from plain sockets. */
class GateTest {
    private static final String FORM = "application/x-www-form-urlencoded";
    private static final String PAGE = "GET /page HTTP/1.1\r\nHost: a\r\nConnection: close\r\n\r\n";

    static final Stage stage = Stage.at(
            "http://localhost:8420",
            PrincipalResolver.NONE,
            pages -> List.of(routes -> {
                routes.get("/page", Role.ANYONE, ctx -> ctx.result("page"));
                routes.get("/play/part", Role.ANYONE, ctx -> ctx.result("part"));
                routes.post("/form", Role.ANYONE, ctx -> ctx.result("got " + ctx.formParam("what")));
                routes.post("/bytes", Role.ANYONE, ctx -> ctx.result("got " + ctx.bodyAsBytes().length));
            }));

    @AfterAll
    static void close() {
        stage.close();
    }

    /** A server has some 250 threads; three hundred bodies that hold one each would leave none. */
    @ParameterizedTest
    @ValueSource(strings = {FORM, "application/octet-stream"})
    void slowBodiesTakeNoThreadFromPages(String type) throws IOException {
        var slow = new ArrayList<Socket>();
        try {
            for (int i = 0; i < 300; i++) {
                slow.add(begin("/form", type, 100_000));
            }
            for (int i = 0; i < 10; i++) {
                assertThat(RawRequest.status(stage.port(), PAGE)).isEqualTo(200);
            }
        } finally {
            for (var socket : slow) {
                socket.close();
            }
        }
        assertThat(awaitAPlace(type)).isTrue();
    }

    /** The places of connections that were closed are free again as soon as the server has seen it. */
    private static boolean awaitAPlace(String type) {
        String request = request(FORM.equals(type) ? "/form" : "/bytes", type, 6) + "what=1";
        for (int tries = 0; tries < 1_000; tries++) {
            if (RawRequest.status(stage.port(), request.replace("\r\n\r\n", "\r\nConnection: close\r\n\r\n")) == 200) {
                return true;
            }
        }
        return false;
    }

    /** Thirty browsers behind one address ask for six parts each; who finds no thread waits, and nobody is refused. */
    @Test
    void aClassThatPlaysAtOnceIsAnsweredWhole() throws IOException {
        var class30 = new ArrayList<Socket>();
        try {
            for (int i = 0; i < 180; i++) {
                var socket = new Socket("127.0.0.1", stage.port());
                class30.add(socket);
                send(socket, PAGE.replace("/page", "/play/part"));
            }
            for (var socket : class30) {
                socket.setSoTimeout(20_000);
                assertThat(new String(socket.getInputStream().readNBytes(12), StandardCharsets.US_ASCII))
                        .isEqualTo("HTTP/1.1 200");
            }
        } finally {
            for (var socket : class30) {
                socket.close();
            }
        }
    }

    /** Both at once, since either takes its time. */
    @Test
    void bodiesAndFormsThatComeTooSlowlyAreGivenUp() throws IOException {
        try (var body = begin("/bytes", "application/octet-stream", 100_000);
                var form = begin("/form", FORM, 100_000)) {
            assertThat(Stream.of(body, form).map(GateTest::givenUpLater).toList())
                    .extracting(CompletableFuture::join)
                    .allSatisfy(after -> assertThat(after).isBetween(Duration.ofSeconds(5), Duration.ofSeconds(30)));
        }
    }

    private static CompletableFuture<Duration> givenUpLater(Socket socket) {
        return CompletableFuture.supplyAsync(() -> {
            try {
                return givenUpAfter(socket);
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        });
    }

    @Test
    void aFormThatComesInPiecesIsReadWhole() throws IOException {
        try (var socket = new Socket("127.0.0.1", stage.port())) {
            socket.setSoTimeout(20_000);
            send(socket, request("/form", FORM, 10).replace("\r\n\r\n", "\r\nConnection: close\r\n\r\n"));
            send(socket, "what=");
            send(socket, "12");
            send(socket, "345");
            String answer = new String(socket.getInputStream().readAllBytes(), StandardCharsets.UTF_8);
            assertThat(answer).contains(" 200 ").endsWith("got 12345");
        }
    }

    /** How long the server listened to one byte every half second before it answered with 408 or cut the line. */
    private static Duration givenUpAfter(Socket socket) throws IOException {
        long begun = System.nanoTime();
        socket.setSoTimeout(500);
        for (int i = 0; i < 120; i++) {
            try {
                send(socket, "a");
                String answer = new String(socket.getInputStream().readNBytes(12), StandardCharsets.US_ASCII);
                assertThat(answer).isIn("", "HTTP/1.1 408");
                break;
            } catch (SocketTimeoutException nothingYet) {
                continue;
            } catch (SocketException cut) {
                break;
            }
        }
        return Duration.ofNanos(System.nanoTime() - begun);
    }

    private static Socket begin(String path, String type, int length) throws IOException {
        var socket = new Socket("127.0.0.1", stage.port());
        send(socket, request(path, type, length) + "w");
        return socket;
    }

    private static String request(String path, String type, int length) {
        return "POST " + path + " HTTP/1.1\r\nHost: a\r\nSec-Fetch-Site: same-origin\r\nContent-Type: " + type
                + "\r\nContent-Length: " + length + "\r\n\r\n";
    }

    private static void send(Socket socket, String text) throws IOException {
        socket.getOutputStream().write(text.getBytes(StandardCharsets.US_ASCII));
        socket.getOutputStream().flush();
    }
}
