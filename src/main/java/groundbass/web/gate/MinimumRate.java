package groundbass.web.gate;

import java.time.Duration;

/**
 * How slowly a body may come in or a file go out. Five hundred bytes a second are less than any line on which somebody
 * reads pages; a line that stands still for half a minute is cut by the server anyway.
 *
 * @param every how often it is looked at
 * @param least bytes that have moved since
 * @param times how often it is looked at before it has taken too long altogether
 */
record MinimumRate(Duration every, long least, int times) {
    /** A form within a minute and a half; a recording of 100 MB at the least rate that makes sense within an hour. */
    static final MinimumRate BODY = new MinimumRate(Duration.ofSeconds(10), 5_000, 360);

    /** A piece that the server writes at once must have left before the next look. */
    static final MinimumRate FILE = new MinimumRate(Duration.ofSeconds(60), 30_000, 60);
}
