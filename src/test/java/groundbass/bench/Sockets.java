package groundbass.bench;

import java.io.BufferedInputStream;
import java.io.EOFException;
import java.io.IOException;
import java.io.InputStream;
import java.net.Socket;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.Callable;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.concurrent.atomic.AtomicLong;
import java.util.stream.IntStream;

/**
 * Load from plain sockets, a thread for each connection (HTTP/1.1, kept alive). Unlike other programs it reads every
 * answer that it asked for to the end, so that both sides can be counted.
 */
final class Sockets {
    /** Each request comes from a reader of its own, whose address a front server would tell. */
    private static final AtomicLong ASKED = new AtomicLong();

    private static final int BUFFER = 64 * 1024;

    private final URI address;
    private final long end;
    private final List<Double> millis = new ArrayList<>();
    private long failed;

    private Sockets(URI address, long end) {
        this.address = address;
        this.end = end;
    }

    static Load.Result run(URI address, int seconds) throws Exception {
        long start = System.nanoTime();
        var pool = Executors.newFixedThreadPool(Load.CONNECTIONS);
        try {
            List<Callable<Sockets>> connections = IntStream.range(0, Load.CONNECTIONS)
                    .mapToObj(i -> (Callable<Sockets>) new Sockets(address, start + seconds * 1_000_000_000L)::ask)
                    .toList();
            return result(pool.invokeAll(connections), start);
        } finally {
            pool.shutdownNow();
        }
    }

    private static Load.Result result(List<Future<Sockets>> connections, long start) throws Exception {
        double seconds = (System.nanoTime() - start) / 1e9;
        var millis = new ArrayList<Double>();
        long failed = 0;
        for (var connection : connections) {
            millis.addAll(connection.get().millis);
            failed += connection.get().failed;
        }
        millis.sort(null);
        int count = millis.size();
        return new Load.Result(count, count / seconds, millis.get(count / 2), millis.get(count * 99 / 100), failed);
    }

    private Sockets ask() throws IOException {
        try (var socket = new Socket(address.getHost(), address.getPort())) {
            socket.setTcpNoDelay(true);
            var in = new BufferedInputStream(socket.getInputStream(), BUFFER);
            while (System.nanoTime() < end) {
                long asked = System.nanoTime();
                socket.getOutputStream().write(request());
                if (answer(in)) millis.add((System.nanoTime() - asked) / 1e6);
                else failed++;
            }
        }
        return this;
    }

    private byte[] request() {
        long n = ASKED.incrementAndGet();
        var reader = "10." + n % 250 + "." + n / 250 % 250 + "." + n / 62_500 % 250;
        return ("GET " + address.getRawPath() + " HTTP/1.1\r\nHost: " + address.getAuthority() + "\r\nX-Forwarded-For: "
                        + reader + "\r\nAccept-Encoding: gzip\r\n\r\n")
                .getBytes(StandardCharsets.US_ASCII);
    }

    private static boolean answer(InputStream in) throws IOException {
        boolean fine = line(in).contains(" 200 ");
        long length = 0;
        for (String line = line(in); !line.isEmpty(); line = line(in)) {
            if (line.toLowerCase(Locale.ROOT).startsWith("content-length:")) {
                length = Long.parseLong(line.substring(line.indexOf(':') + 1).strip());
            }
        }
        in.skipNBytes(length);
        return fine;
    }

    private static String line(InputStream in) throws IOException {
        var line = new StringBuilder();
        for (int c = in.read(); c != '\n'; c = in.read()) {
            if (c < 0) throw new EOFException("the server closed the connection");
            if (c != '\r') line.append((char) c);
        }
        return line.toString();
    }
}
