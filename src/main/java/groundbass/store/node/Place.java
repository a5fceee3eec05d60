package groundbass.store.node;

import java.net.InetAddress;
import java.net.UnknownHostException;

/** How an operator finds a process again: its machine and its number there. */
final class Place {
    private static final int LONGEST_HOST = 30;

    private Place() {}

    /** Such as {@code process 4711 on quay}, at most 60 characters. */
    static String ofThisProcess() {
        return "process " + ProcessHandle.current().pid() + " on " + host();
    }

    private static String host() {
        try {
            String name = InetAddress.getLocalHost().getHostName();
            return name.substring(0, Math.min(name.length(), LONGEST_HOST));
        } catch (UnknownHostException e) {
            return "an unnamed machine";
        }
    }
}
