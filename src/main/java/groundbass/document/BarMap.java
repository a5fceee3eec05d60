package groundbass.document;

import java.util.List;

/**
 * When each bar of the main line begins in a recording of it, which drifts as live playing does.
 *
 * @param bars in the order in which they are played; empty while nobody has said so
 * @param end when the last of them ends, in seconds of the recording
 */
public record BarMap(List<Start> bars, double end) {
    public static final BarMap NONE = new BarMap(List.of(), 0);

    /** No recording holds more. */
    public static final int MOST_BARS = 4_000;

    /**
     * @param bar its number in the line
     * @param pass through its repeated stretch, from 1
     * @param round through the whole line, from 1
     * @param seconds from the start of the recording
     */
    public record Start(int bar, int pass, int round, double seconds) {}

    public BarMap {
        bars = List.copyOf(bars);
    }

    /** Whether it is one: bars follow one another inside the recording, and the end follows them. */
    public boolean runsForward(double recordingSeconds) {
        double before = -1;
        for (var bar : bars) {
            boolean named = bar.bar() >= 0 && bar.pass() >= 1 && bar.round() >= 1;
            if (!named || !(bar.seconds() > before) || bar.seconds() < 0) {
                return false;
            }
            before = bar.seconds();
        }
        return bars.size() <= MOST_BARS && (bars.isEmpty() || end > before && end <= recordingSeconds + 1);
    }
}
