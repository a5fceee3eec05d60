package groundbass.web.shell;

import java.time.Duration;

/** What may be done only so often. */
public enum Limit {
    /** Links asked for, and passwords tried, by one caller or for one address. */
    SIGN_IN(10, Duration.ofMinutes(15)),
    UPLOAD(60, Duration.ofHours(1)),
    /** Files asked for by one caller; a download manager asks for many ranges. */
    DOWNLOAD(600, Duration.ofMinutes(10)),
    /** Parts of recordings that the page plays: one for each bar of each stem, and a class may share an address. */
    PLAY(20_000, Duration.ofMinutes(10)),
    /** Stretches of a draft made audible for one educator; what was made already is not counted. */
    LISTENING(120, Duration.ofMinutes(10));

    final int times;
    final Duration period;

    Limit(int times, Duration period) {
        this.times = times;
        this.period = period;
    }
}
