package groundbass.publishing.address;

import groundbass.publishing.address.LinkAnswer.Kind;
import java.io.BufferedInputStream;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.InputStream;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.Socket;
import java.net.URI;
import java.net.UnknownHostException;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.time.Duration;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.TimeUnit;
import java.util.function.Predicate;
import java.util.regex.Pattern;
import javax.net.ssl.SSLSocket;
import javax.net.ssl.SSLSocketFactory;

/**
 * Asks a web server whether a page is there: HEAD, and GET where that is refused (RFC 9110 section 9.3), over HTTP/1.1. A
 * name is looked up once, all its addresses must be public, and the connection goes to one of those that were looked at: so
 * no name leads into the network of this machine, also not at a second look. Each redirect is looked at anew. Reads no more
 * than the head of an answer, and listens to nobody for long.
 */
final class LinkTrial {
    private static final int MOST_REDIRECTS = 5;
    private static final int MOST_BYTES = 16_384;
    private static final int CONNECT_MILLIS = 3_000;
    private static final int READ_MILLIS = 4_000;
    private static final Duration LONGEST = Duration.ofSeconds(15);
    private static final Set<Integer> REDIRECTS = Set.of(301, 302, 303, 307, 308);
    private static final Pattern STATUS = Pattern.compile("HTTP/1\\.[01] ([1-5][0-9]{2})(?: .*)?");
    private static final int SECURE_PORT = 443;
    private static final int PLAIN_PORT = 80;
    private static final int FINAL = 200;
    private static final int FAULTS = 400;

    private final Clock clock;
    private final Predicate<InetAddress> isPublic;
    private final Predicate<Integer> ports;

    LinkTrial(Clock clock) {
        this(clock, PublicNetwork::has, Set.of(PLAIN_PORT, SECURE_PORT)::contains);
    }

    /** @param isPublic, ports which addresses and ports may be asked */
    LinkTrial(Clock clock, Predicate<InetAddress> isPublic, Predicate<Integer> ports) {
        this.clock = clock;
        this.isPublic = isPublic;
        this.ports = ports;
    }

    /** What a server said. */
    private record Head(int status, Optional<String> location) {}

    /** Nothing that is asked: told apart from servers that do not answer. */
    private static final class NotPublic extends IOException {
        private static final long serialVersionUID = 1L;
    }

    LinkAnswer of(String address) {
        try {
            return follow(URI.create(address.strip()));
        } catch (NotPublic e) {
            return ended(Kind.NOT_PUBLIC);
        } catch (UnknownHostException e) {
            return ended(Kind.UNKNOWN);
        } catch (IOException | IllegalArgumentException e) {
            return ended(Kind.SILENT);
        }
    }

    private LinkAnswer ended(Kind kind) {
        return new LinkAnswer(kind, 0, clock.instant());
    }

    private LinkAnswer follow(URI first) throws IOException {
        long end = System.nanoTime() + LONGEST.toNanos();
        var page = first;
        for (int i = 0; i <= MOST_REDIRECTS && System.nanoTime() < end; i++) {
            var head = ask(page, "HEAD", end);
            if (head.status() >= FAULTS) {
                head = ask(page, "GET", end); // some refuse to tell of a page without giving it
            }
            if (!REDIRECTS.contains(head.status()) || head.location().isEmpty()) {
                return new LinkAnswer(Kind.ANSWERED, head.status(), clock.instant());
            }
            page = next(page, head.location().get());
        }
        return ended(Kind.ENDLESS);
    }

    private static URI next(URI page, String location) throws NotPublic {
        try {
            return page.resolve(location);
        } catch (IllegalArgumentException e) {
            throw new NotPublic();
        }
    }

    private Head ask(URI page, String method, long end) throws IOException {
        boolean secure = "https".equalsIgnoreCase(page.getScheme());
        if (!secure && !"http".equalsIgnoreCase(page.getScheme())
                || page.getHost() == null
                || page.getRawUserInfo() != null) {
            throw new NotPublic();
        }
        int port = page.getPort() >= 0 ? page.getPort() : secure ? SECURE_PORT : PLAIN_PORT;
        var server = looked(page.getHost(), port);
        try (var plain = new Socket()) {
            plain.setSoTimeout(READ_MILLIS);
            cutOff(plain, end);
            plain.connect(new InetSocketAddress(server, port), CONNECT_MILLIS);
            try (var socket = secure ? secured(plain, page.getHost(), port) : plain) {
                socket.getOutputStream().write(request(page, method).getBytes(StandardCharsets.US_ASCII));
                return head(new BufferedInputStream(socket.getInputStream()), end);
            }
        }
    }

    /** A server that says a little now and then, and never enough, is not listened to for long. */
    private static void cutOff(Socket socket, long end) {
        CompletableFuture.delayedExecutor(end - System.nanoTime(), TimeUnit.NANOSECONDS)
                .execute(() -> {
                    try {
                        socket.close();
                    } catch (IOException e) {
                        // it is closed, or nothing more comes of it
                    }
                });
    }

    private InetAddress looked(String host, int port) throws IOException {
        var found = List.of(InetAddress.getAllByName(host));
        if (!ports.test(port) || !found.stream().allMatch(isPublic)) {
            throw new NotPublic();
        }
        return found.get(0);
    }

    /** The certificate must be that of the name that was asked for (RFC 9110 section 4.3.4). */
    private static Socket secured(Socket plain, String host, int port) throws IOException {
        var socket =
                (SSLSocket) ((SSLSocketFactory) SSLSocketFactory.getDefault()).createSocket(plain, host, port, true);
        var parameters = socket.getSSLParameters();
        parameters.setEndpointIdentificationAlgorithm("HTTPS");
        socket.setSSLParameters(parameters);
        socket.startHandshake();
        return socket;
    }

    private static String request(URI page, String method) {
        String ascii = page.toASCIIString();
        String path = URI.create(ascii).getRawPath();
        String query = URI.create(ascii).getRawQuery();
        String host = page.getPort() >= 0 ? page.getHost() + ":" + page.getPort() : page.getHost();
        return method + " " + (path == null || path.isEmpty() ? "/" : path) + (query == null ? "" : "?" + query)
                + " HTTP/1.1\r\nHost: " + host + "\r\nUser-Agent: Groundbass (looks whether links are there)\r\n"
                + "Accept: */*\r\nConnection: close\r\n\r\n";
    }

    /** The head of the answer that counts: some servers first say that it comes (RFC 9110 section 15.2). */
    private static Head head(InputStream in, long end) throws IOException {
        var head = read(lines(in, end));
        while (head.status() < FINAL) {
            head = read(lines(in, end));
        }
        return head;
    }

    /** Up to the empty line and not a byte further: a server may keep what comes after it to itself for long. */
    private static String[] lines(InputStream in, long end) throws IOException {
        var text = new ByteArrayOutputStream();
        int lines = 0;
        while (lines < 2) {
            int one = in.read();
            if (one < 0) {
                break;
            }
            if (text.size() >= MOST_BYTES || System.nanoTime() > end) {
                throw new IOException("no answer that can be read");
            }
            text.write(one);
            lines = one == '\n' ? lines + 1 : one == '\r' ? lines : 0;
        }
        return text.toString(StandardCharsets.ISO_8859_1).split("\r?\n", -1);
    }

    private static Head read(String... lines) throws IOException {
        var status = STATUS.matcher(lines[0]);
        if (!status.matches()) {
            throw new IOException("no answer of a web server");
        }
        var location = List.of(lines).stream()
                .filter(line -> line.toLowerCase(Locale.ROOT).startsWith("location:"))
                .map(line -> line.substring("location:".length()).strip())
                .filter(where -> !where.isEmpty())
                .findFirst();
        return new Head(Integer.parseInt(status.group(1)), location);
    }
}
