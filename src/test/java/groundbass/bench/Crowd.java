package groundbass.bench;

import groundbass.bench.Wednesday.Deed;
import groundbass.bench.Wednesday.Wish;
import java.io.IOException;
import java.net.URI;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;

/**
 * Students who do what they wish at their time, each on a connection of its own, at the servers of a site in turn. How long
 * something took counts from when it was wished, so that whoever had to wait for others is counted as waiting.
 */
final class Crowd {
    private final List<URI> servers;
    private final Offer offer;
    private final Map<Deed, Tally> tallies = new EnumMap<>(Deed.class);

    Crowd(List<URI> servers, Offer offer) {
        this.servers = servers;
        this.offer = offer;
        for (Deed deed : Deed.values()) {
            tallies.put(deed, new Tally());
        }
    }

    /** @param factor so many seconds of the evening pass in one */
    void live(List<Wish> wishes, double factor) throws InterruptedException {
        ExecutorService students = Executors.newCachedThreadPool();
        long begun = System.nanoTime();
        for (var wish : wishes) {
            long due = begun + (long) (wish.after().toNanos() / factor);
            for (long left = due - System.nanoTime(); left > 0; left = due - System.nanoTime()) {
                LockSupport.parkNanos(left);
            }
            students.execute(() -> grant(wish.deed(), wish.student(), due));
        }
        students.shutdown();
        if (!students.awaitTermination(2, TimeUnit.MINUTES)) {
            students.shutdownNow();
        }
    }

    private void grant(Deed deed, int student, long due) {
        var tally = tallies.get(deed);
        try (var visitor = new Visitor(servers.get(student % servers.size()), student)) {
            var paths = offer.of(deed, student);
            visitor.get(paths.get(0));
            tally.answered((System.nanoTime() - due) / 1e6);
            for (String path : paths.subList(1, paths.size())) {
                visitor.get(path);
            }
            tally.whole((System.nanoTime() - due) / 1e6);
        } catch (IOException e) {
            tally.failed(e);
        }
    }

    Tally of(Deed deed) {
        return tallies.get(deed);
    }
}
