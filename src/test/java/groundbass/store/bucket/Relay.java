package groundbass.store.bucket;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;

/** Passes bytes on to a server, until it is cut: then nobody answers under its port, as where a network is away. */
public final class Relay {
    private static final int WAITING = 50;

    private final int to;
    private final int port;
    private final Set<Socket> open = ConcurrentHashMap.newKeySet();
    private ServerSocket door;

    Relay(int to) throws IOException {
        this.to = to;
        this.door = new ServerSocket(0, WAITING, InetAddress.getLoopbackAddress());
        this.port = door.getLocalPort();
        daemon(() -> serve(door));
    }

    int port() {
        return port;
    }

    /** Drops every connection, and takes none. */
    public synchronized void cut() {
        try {
            door.close();
            for (var socket : open) {
                socket.close();
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    public synchronized void mend() {
        try {
            if (door.isClosed()) {
                door = new ServerSocket(port, WAITING, InetAddress.getLoopbackAddress());
                var again = door;
                daemon(() -> serve(again));
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private void serve(ServerSocket at) {
        try {
            while (true) {
                var in = at.accept();
                var out = new Socket(InetAddress.getLoopbackAddress(), to);
                passOn(at, in, out);
            }
        } catch (IOException e) {
            return; // cut
        }
    }

    /** What was let in at the moment of the cut is dropped as well. */
    private synchronized void passOn(ServerSocket at, Socket in, Socket out) throws IOException {
        if (at.isClosed()) {
            in.close();
            out.close();
            return;
        }
        open.add(in);
        open.add(out);
        daemon(() -> pass(in, out));
        daemon(() -> pass(out, in));
    }

    private void pass(Socket from, Socket into) {
        try (from;
                into) {
            from.getInputStream().transferTo(into.getOutputStream());
        } catch (IOException e) {
            return; // cut, or one of both has gone
        } finally {
            open.remove(from);
            open.remove(into);
        }
    }

    private static void daemon(Runnable work) {
        var thread = new Thread(work, "relay");
        thread.setDaemon(true);
        thread.start();
    }
}
