package groundbass.bench;

import java.io.IOException;
import java.io.OutputStream;
import java.net.InetSocketAddress;
import java.net.Socket;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.ThreadLocalRandom;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;

/**
 * What somebody without an account can send. Each request comes from a network of its own, whose address a front server
 * would tell; only slow connections come from few.
 */
final class Attacks {
    private static final String FORM = "application/x-www-form-urlencoded";
    private static final int PATIENCE_MILLIS = 15_000;
    private static final int SLOW = 300;
    private static final long BETWEEN_BYTES = TimeUnit.SECONDS.toNanos(5);
    private static final int BYTES_OF_A_SLOW_ONE = 4;

    private final int port;
    private final String lesson;
    private final String file;

    /** @param lesson the path of a lesson that is out, {@code file} that of a large file of it */
    Attacks(int port, String lesson, String file) {
        this.port = port;
        this.lesson = lesson;
        this.file = file;
    }

    List<Attacker> all() {
        return List.of(
                new Attacker(
                        "lines to draw, 45 kB",
                        4,
                        () -> post("/desk/episodes/" + "a".repeat(16) + "/look", heavyLines())),
                new Attacker(
                        "notes to render, 96 kB",
                        2,
                        () -> post(
                                "/desk/episodes/" + "a".repeat(16) + "/publish", notes("![](bars:1) ".repeat(4_000)))),
                new Attacker(
                        "brackets, 120 kB",
                        2,
                        () -> post(
                                "/desk/episodes/" + "a".repeat(16), notes("![".repeat(30_000) + "](".repeat(30_000)))),
                new Attacker("spellings of one address", 4, () -> get(spelled(lesson), "")),
                new Attacker(
                        "pages in many languages",
                        2,
                        () -> get(lesson + "?" + any(), "Accept-Language: " + any() + "\r\n")),
                new Attacker(
                        "wrong passwords",
                        24,
                        () -> post("/desk/sign-in", "email=" + any() + "%40a.example&password=" + any())),
                new Attacker("letters for strangers", 1, () -> post("/sign-in", "email=" + any() + "%40a.example")),
                new Attacker("odd headers", 2, () -> get("/", odd())),
                new Attacker("files for nobody", 1, this::multipart),
                new Attacker("files from many networks", 2, () -> get("/files/" + "a".repeat(16) + "/" + any(), "")),
                new Attacker("slow forms", 1, () -> slow(FORM)),
                new Attacker("slow uploads", 1, () -> slow("application/octet-stream")),
                new Attacker("slow readers", 1, this::slowReaders));
    }

    private static String heavyLines() {
        String line = "bar 1\n1-4 " + "E5, ".repeat(199) + "E5\n" + "bar = bar 1\n".repeat(249);
        var body = new StringBuilder("base=0&mainLine=" + encoded(line));
        for (int i = 0; i < 9; i++) {
            body.append("&exerciseName=x&exerciseText=").append(encoded(line));
        }
        return body.toString();
    }

    private static String notes(String notes) {
        return "base=0&mainLine=" + encoded("bar 1\n1-4 E5\n") + "&notes=" + encoded(notes);
    }

    private static String encoded(String text) {
        return URLEncoder.encode(text, StandardCharsets.UTF_8);
    }

    private static String any() {
        return Long.toString(ThreadLocalRandom.current().nextLong(Long.MAX_VALUE), Character.MAX_RADIX);
    }

    private static String spelled(String path) {
        var spelled = new StringBuilder();
        for (char c : path.toCharArray()) {
            boolean other = c != '/' && ThreadLocalRandom.current().nextBoolean();
            spelled.append(other ? "%%%02x".formatted((int) c) : String.valueOf(c));
        }
        return spelled.toString();
    }

    private static String odd() {
        var headers = List.of(
                "Accept-Language: -\r\n",
                "Cookie: language=-\r\n",
                "Accept-Language: " + "a-".repeat(2_000) + "\r\n",
                "Cookie: flash=" + any() + "; session=" + any() + "\r\n",
                "Content-Type: text/html; charset=nope\r\n");
        return headers.get(ThreadLocalRandom.current().nextInt(headers.size()));
    }

    private String get(String path, String headers) throws IOException {
        return answer("GET " + path + " HTTP/1.1\r\n" + usual() + headers + "\r\n");
    }

    private String post(String path, String body) throws IOException {
        return answer("POST " + path + " HTTP/1.1\r\n" + usual() + "Content-Type: " + FORM + "\r\nContent-Length: "
                + body.length() + "\r\n\r\n" + body);
    }

    private String multipart() throws IOException {
        String head = "POST /sign-in HTTP/1.1\r\n" + usual()
                + "Content-Type: multipart/form-data; boundary=x\r\nContent-Length: 30000000\r\n\r\n";
        return answer(head + "x".repeat(1_000_000));
    }

    private static String usual() {
        var random = ThreadLocalRandom.current();
        String network = "10." + random.nextInt(256) + "." + random.nextInt(256) + "." + random.nextInt(256);
        return "Host: localhost\r\nAccept: text/html\r\nAccept-Encoding: gzip\r\nSec-Fetch-Site: same-origin\r\n"
                + "Connection: close\r\nX-Forwarded-For: " + network + "\r\n";
    }

    /** Three hundred bodies at once, of which a byte comes now and then. */
    private String slow(String type) throws IOException {
        String head =
                "POST /sign-in HTTP/1.1\r\nHost: localhost\r\nSec-Fetch-Site: same-origin\r\nX-Forwarded-For: 192.0.2."
                        + "%d\r\nContent-Type: " + type + "\r\nContent-Length: 100000\r\n\r\n";
        return drip(head);
    }

    /** Three hundred readers of a large file who read next to nothing of it. */
    private String slowReaders() throws IOException {
        return drip("GET " + file + " HTTP/1.1\r\nHost: localhost\r\nX-Forwarded-For: 192.0.2.%d\r\n\r\n");
    }

    private String drip(String head) throws IOException {
        var sockets = new ArrayList<Socket>();
        try {
            for (int i = 0; i < SLOW; i++) {
                sockets.add(open(head.formatted(1 + i % 10)));
            }
            for (int n = 0; n < BYTES_OF_A_SLOW_ONE; n++) {
                LockSupport.parkNanos(BETWEEN_BYTES);
                sockets.forEach(Attacks::aByte);
            }
        } finally {
            for (var socket : sockets) {
                socket.close();
            }
        }
        return SLOW + " at once";
    }

    private static void aByte(Socket socket) {
        try {
            socket.getOutputStream().write('a');
        } catch (IOException cutByTheServer) {
            // it has given this one up, which is what it should do
        }
    }

    private Socket open(String request) throws IOException {
        var socket = new Socket();
        socket.setReceiveBufferSize(4 * 1024);
        socket.setSoTimeout(PATIENCE_MILLIS);
        socket.connect(new InetSocketAddress("127.0.0.1", port), PATIENCE_MILLIS);
        socket.getOutputStream().write(request.getBytes(StandardCharsets.ISO_8859_1));
        return socket;
    }

    /** The status; the rest of the answer is read too, as readers do. */
    private String answer(String request) throws IOException {
        try (var socket = new Socket("127.0.0.1", port)) {
            socket.setSoTimeout(PATIENCE_MILLIS);
            socket.getOutputStream().write(request.getBytes(StandardCharsets.ISO_8859_1));
            var in = socket.getInputStream();
            String status = new String(in.readNBytes(12), StandardCharsets.US_ASCII);
            in.transferTo(OutputStream.nullOutputStream());
            return status.length() == 12 ? status.substring(9) : "cut";
        }
    }
}
