package groundbass.bench;

import java.io.IOException;
import java.net.HttpURLConnection;
import java.net.URI;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;

/** Opens a page once a second, as a reader would, and notes whether and how soon it came. */
final class Watch {
    private static final int PATIENCE_MILLIS = 10_000;
    private static final long A_SECOND = TimeUnit.SECONDS.toNanos(1);

    private final URI page;
    private final List<Double> millis = new ArrayList<>();
    private long asked;
    private long longestGap;
    private long lastAnswer = System.nanoTime();

    Watch(URI page) {
        this.page = page;
    }

    void start(long endNanos) {
        var thread = new Thread(
                () -> {
                    while (System.nanoTime() < endNanos) {
                        ask();
                        LockSupport.parkNanos(A_SECOND);
                    }
                },
                "watch " + page);
        thread.setDaemon(true);
        thread.start();
    }

    private void ask() {
        long start = System.nanoTime();
        boolean came = came();
        note(came, (System.nanoTime() - start) / 1e6);
    }

    private boolean came() {
        try {
            var connection = (HttpURLConnection) page.toURL().openConnection();
            connection.setConnectTimeout(PATIENCE_MILLIS);
            connection.setReadTimeout(PATIENCE_MILLIS);
            connection.setRequestProperty("Accept", "text/html");
            boolean fine = connection.getResponseCode() == HttpURLConnection.HTTP_OK;
            connection.getInputStream().readAllBytes();
            connection.disconnect();
            return fine;
        } catch (IOException e) {
            return false;
        }
    }

    private synchronized void note(boolean came, double after) {
        asked++;
        if (came) {
            longestGap = Math.max(longestGap, System.nanoTime() - lastAnswer);
            lastAnswer = System.nanoTime();
            millis.add(after);
        }
    }

    /** How often it came, how soon half and 99 of 100 times, and the longest time without it. */
    synchronized String told() {
        var sorted = millis.stream().sorted().toList();
        int count = sorted.size();
        return String.format(
                Locale.ROOT,
                "%-28s %,6d of %,d answered   p50 %7.0f ms   p99 %7.0f ms   longest gap %.1f s",
                page.getPath(),
                count,
                asked,
                count == 0 ? Double.NaN : sorted.get(count / 2),
                count == 0 ? Double.NaN : sorted.get(count * 99 / 100),
                longestGap / 1e9);
    }
}
