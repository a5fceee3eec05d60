package groundbass.store.bucket;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.atomic.AtomicLong;

/**
 * Passes bytes on to a server, until it is cut: then nobody answers under its port, as where a network is away. It can also
 * end connections in the middle of an answer.
 */
public final class Relay {
    private static final int WAITING = 50;

    private final int to;
    private final int port;
    private final Set<Socket> open = ConcurrentHashMap.newKeySet();
    private final AtomicLong answered = new AtomicLong();
    private volatile long most = Long.MAX_VALUE;
    private ServerSocket door;

    Relay(int to) throws IOException {
        this.to = to;
        this.door = new ServerSocket(0, WAITING, InetAddress.getLoopbackAddress());
        this.port = door.getLocalPort();
        daemon(() -> serve(door));
    }

    public int port() {
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

    /** Passes so many bytes of answers on, then ends the connection in good order, and every later one. */
    public void breakOffAfter(long bytes) {
        answered.set(0);
        most = bytes;
    }

    public synchronized void mend() {
        most = Long.MAX_VALUE;
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
        daemon(() -> answer(out, in));
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

    private void answer(Socket from, Socket into) {
        byte[] buffer = new byte[8_192];
        try (from;
                into) {
            var in = from.getInputStream();
            for (int n = in.read(buffer); n >= 0; n = in.read(buffer)) {
                long room = most - answered.getAndAdd(n);
                into.getOutputStream().write(buffer, 0, (int) Math.max(0, Math.min(n, room)));
                if (room <= n) {
                    return;
                }
            }
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
