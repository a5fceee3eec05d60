package groundbass.bench;

import java.io.IOException;
import java.net.HttpURLConnection;
import java.net.ServerSocket;
import java.net.URI;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;

/** Waits for servers of this machine. */
final class Probe {
    private static final int STEP_MILLIS = 10;

    private Probe() {}

    static int freePort() throws IOException {
        try (var socket = new ServerSocket(0)) {
            return socket.getLocalPort();
        }
    }

    /** Milliseconds until the address answers 200 to a reader. */
    static long waitFor(URI address, int seconds) {
        long start = System.nanoTime();
        while (status(address) != 200) {
            if (System.nanoTime() - start > TimeUnit.SECONDS.toNanos(seconds)) {
                throw new IllegalStateException(address + " did not answer within " + seconds + " s");
            }
            LockSupport.parkNanos(TimeUnit.MILLISECONDS.toNanos(STEP_MILLIS));
        }
        return TimeUnit.NANOSECONDS.toMillis(System.nanoTime() - start);
    }

    private static int status(URI address) {
        try {
            var connection = (HttpURLConnection) address.toURL().openConnection();
            connection.setRequestProperty("Accept", "text/html");
            connection.setReadTimeout(5_000);
            int status = connection.getResponseCode();
            connection.disconnect();
            return status;
        } catch (IOException notYet) {
            return 0;
        }
    }
}
