package groundbass.web.gate;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.net.Socket;
import java.nio.charset.StandardCharsets;
import java.util.List;

/** A request as it goes over the wire, for what no client library would send. */
public final class RawRequest {
    private static final int PATIENCE_MILLIS = 20_000;

    private RawRequest() {}

    /** The status of the answer. */
    public static int status(int port, String request) {
        return Integer.parseInt(head(port, request).get(0).split(" ")[1]);
    }

    /** The first line of the answer and its headers. */
    public static List<String> head(int port, String request) {
        try (var socket = new Socket("127.0.0.1", port)) {
            socket.setSoTimeout(PATIENCE_MILLIS);
            socket.getOutputStream().write(request.getBytes(StandardCharsets.UTF_8));
            var in = new BufferedReader(new InputStreamReader(socket.getInputStream(), StandardCharsets.US_ASCII));
            return in.lines().takeWhile(line -> !line.isEmpty()).toList();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
