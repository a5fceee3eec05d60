package groundbass.web.gate;

import java.util.HashMap;
import java.util.Map;

/** Room for so many at once, of whom one network has only a part. Thread-safe. */
final class ConnectionLimit {
    private final int each;
    private final int all;
    private final Map<String, Integer> taken = new HashMap<>();
    private int sum;

    ConnectionLimit(int each, int all) {
        this.each = each;
        this.all = all;
    }

    /** Takes a place, if there is one; {@link #leave} gives it back. */
    synchronized boolean enter(String network) {
        int here = taken.getOrDefault(network, 0);
        if (here >= each || sum >= all) {
            return false;
        }
        taken.put(network, here + 1);
        sum++;
        return true;
    }

    synchronized void leave(String network) {
        taken.computeIfPresent(network, (name, here) -> here == 1 ? null : here - 1);
        sum--;
    }
}
