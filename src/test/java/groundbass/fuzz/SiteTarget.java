package groundbass.fuzz;

import static java.nio.charset.StandardCharsets.ISO_8859_1;
import static java.nio.charset.StandardCharsets.UTF_8;

import groundbass.web.Site;
import java.io.IOException;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.List;
import java.util.Random;

/**
 * Raw requests to a whole site: any status but 5xx is an answer. {@code @session} stands for an educator's cookie,
 * {@code @length} for the length of the body, {@code @draft} for an episode of theirs.
 */
final class SiteTarget implements Target {
    private static final int PATIENCE_MILLIS = 30_000;
    private static final int SIGN_IN_EVERY = 50;

    private final Site site = Site.open();
    private String session = "";
    private int taken;

    @Override
    public List<byte[]> examples() {
        String get = " HTTP/1.1\r\nHost: localhost\r\nAccept: text/html\r\nConnection: close\r\n";
        String form = get + "Sec-Fetch-Site: same-origin\r\nContent-Type: application/x-www-form-urlencoded\r\n"
                + "Cookie: session=@session\r\nContent-Length: @length\r\n\r\n";
        return Examples.texts(
                "GET /" + get + "Accept-Language: de-AT,en;q=0.5\r\nCookie: language=de; flash=saved\r\n\r\n",
                "GET /series/harbour-rounds/1" + get + "If-None-Match: \"abc\"\r\n\r\n",
                "GET /assets/groundbass.css" + get
                        + "Range: bytes=0-99,200-\r\nIf-Range: \"x\"\r\nAccept-Encoding: gzip\r\n\r\n",
                "GET /desk" + get + "Cookie: session=@session\r\n\r\n",
                "GET /healthz" + get + "\r\n",
                "GET /e/aaaaaaaaaaaaaaaa" + get + "\r\n",
                "POST /language" + form + "language=de&next=%2F",
                "POST /sign-in" + form + "email=a%40b.example&next=%2Fme",
                "POST /desk/sign-in" + form + "email=a%40b.example&password=12345678&next=%2Fdesk",
                "POST /desk/settings" + form + "siteName=A&language=en&zone=UTC&address=https%3A%2F%2Fa.example",
                "POST /desk/series" + form + "title=A&slug=a&summary=b&zone=Europe%2FVienna",
                "POST /desk/episodes/aaaaaaaaaaaaaaaa" + form + "title=A&line=bar+1&base=1",
                "GET /desk/statistics?from=2026-01-01&to=2026-02-01" + get + "Cookie: session=@session\r\n\r\n");
    }

    @Override
    public List<String> words() {
        return List.of(
                ("Accept-Language: -\r\n|Content-Type: text/plain; charset=nope\r\n|Cookie: language=-\r\n|Range: bytes=9-1\r\n|"
                                + "X-Forwarded-For: 1.2.3.4\r\n|Forwarded: for=\"[::1]\"\r\n|If-Modified-Since: never\r\n|%00|%ff|%2e%2e/|//|"
                                + "?|&|=|;|q=2|*/*|\r\n|Accept: application/json\r\n|HEAD|PUT|OPTIONS")
                        .split("\\|"));
    }

    @Override
    public void take(byte[] input, Random random) throws Throwable {
        site.clock().advance(Duration.ofMinutes(1)); // past what limits a caller
        if (taken++ % SIGN_IN_EVERY == 0) {
            session = site.atTheDesk().getValue();
        }
        String request = new String(input, ISO_8859_1);
        int body = request.indexOf("\r\n\r\n");
        int length = body < 0 ? 0 : request.length() - body - 4;
        String status = status(request.replace("@session", session).replace("@length", Integer.toString(length)));
        if (status.matches("HTTP/1\\.[01] 5(?!0[15]).*")) {
            throw new AssertionError(status);
        }
    }

    private String status(String request) throws IOException {
        try (var socket = new Socket("127.0.0.1", site.groundbass().port())) {
            socket.setSoTimeout(PATIENCE_MILLIS);
            socket.getOutputStream().write(request.getBytes(StandardCharsets.ISO_8859_1));
            socket.shutdownOutput();
            byte[] answer = socket.getInputStream().readNBytes(64);
            return new String(answer, UTF_8).lines().findFirst().orElse("");
        }
    }

    @Override
    public void close() {
        site.close();
    }
}
