package groundbass.post;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.Socket;
import java.util.ArrayList;
import java.util.List;
import javax.net.SocketFactory;

/**
 * The sockets of one letter's conversation. Closing them from another thread ends it wherever it is, also while a
 * server goes on saying a little now and then, which no limit on a single answer notices. Thread-safe.
 */
final class LetterSockets extends SocketFactory implements AutoCloseable {
    private final List<Socket> open = new ArrayList<>();
    private boolean closed;

    @Override
    public synchronized Socket createSocket() throws IOException {
        if (closed) {
            throw new IOException("the letter's time is over");
        }
        var socket = new Socket();
        open.add(socket);
        return socket;
    }

    @Override
    public Socket createSocket(String host, int port) throws IOException {
        return createSocket(InetAddress.getByName(host), port);
    }

    @Override
    public Socket createSocket(String host, int port, InetAddress from, int fromPort) throws IOException {
        return createSocket(InetAddress.getByName(host), port, from, fromPort);
    }

    @Override
    public Socket createSocket(InetAddress host, int port) throws IOException {
        var socket = createSocket();
        socket.connect(new InetSocketAddress(host, port));
        return socket;
    }

    @Override
    public Socket createSocket(InetAddress host, int port, InetAddress from, int fromPort) throws IOException {
        var socket = createSocket();
        socket.bind(new InetSocketAddress(from, fromPort));
        socket.connect(new InetSocketAddress(host, port));
        return socket;
    }

    synchronized boolean isClosed() {
        return closed;
    }

    @Override
    public synchronized void close() {
        closed = true;
        for (Socket socket : open) {
            try {
                socket.close();
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        }
    }
}
