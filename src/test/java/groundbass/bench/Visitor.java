package groundbass.bench;

import java.io.BufferedInputStream;
import java.io.EOFException;
import java.io.IOException;
import java.io.InputStream;
import java.net.Socket;
import java.net.URI;
import java.nio.charset.StandardCharsets;
import java.util.Locale;

/**
 * A reader's browser on a connection of its own (HTTP/1.1, kept alive, gzip), whose address a front server would tell. It reads
 * every answer to its end and keeps nothing.
 */
final class Visitor implements AutoCloseable {
    private static final int PATIENCE_MILLIS = 30_000;
    private static final int BUFFER = 16 * 1024;

    private final Socket socket;
    private final InputStream in;
    private final String headers;

    /** @param number which reader */
    Visitor(URI site, int number) throws IOException {
        this.socket = new Socket(site.getHost(), site.getPort());
        this.headers = "Host: " + site.getAuthority() + "\r\nX-Forwarded-For: " + address(number)
                + "\r\nAccept: */*\r\nAccept-Encoding: gzip\r\n\r\n";
        socket.setTcpNoDelay(true);
        socket.setSoTimeout(PATIENCE_MILLIS);
        this.in = new BufferedInputStream(socket.getInputStream(), BUFFER);
    }

    private static String address(int number) {
        return "10." + number / 62_500 % 250 + "." + number / 250 % 250 + "." + number % 250;
    }

    /** Bytes of the body. @throws IOException with the status where that is not 200 */
    long get(String path) throws IOException {
        socket.getOutputStream().write(("GET " + path + " HTTP/1.1\r\n" + headers).getBytes(StandardCharsets.US_ASCII));
        String status = line();
        long length = 0;
        boolean chunked = false;
        for (String line = line(); !line.isEmpty(); line = line()) {
            String header = line.toLowerCase(Locale.ROOT);
            if (header.startsWith("content-length:")) {
                length =
                        Long.parseLong(header.substring(header.indexOf(':') + 1).strip());
            }
            chunked |= header.startsWith("transfer-encoding:");
        }
        long bytes = chunked ? chunks() : skip(length);
        if (!status.contains(" 200")) {
            throw new IOException(status);
        }
        return bytes;
    }

    /** RFC 9112, section 7.1. */
    private long chunks() throws IOException {
        long bytes = 0;
        long size;
        do {
            size = Long.parseLong(line(), 16);
            bytes += skip(size);
            line();
        } while (size > 0);
        return bytes;
    }

    private long skip(long bytes) throws IOException {
        in.skipNBytes(bytes);
        return bytes;
    }

    private String line() throws IOException {
        var line = new StringBuilder();
        for (int c = in.read(); c != '\n'; c = in.read()) {
            if (c < 0) {
                throw new EOFException("the server closed the connection");
            }
            if (c != '\r') {
                line.append((char) c);
            }
        }
        return line.toString();
    }

    @Override
    public void close() throws IOException {
        socket.close();
    }
}
