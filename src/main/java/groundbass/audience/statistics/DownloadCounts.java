package groundbass.audience.statistics;

import groundbass.audience.download.DownloadState;

/** How many downloads there were, by how they ended. Robots and repeated requests are not among them. */
public record DownloadCounts(long complete, long brokenOff, long handedOver, long running) {
    public static final DownloadCounts NONE = new DownloadCounts(0, 0, 0, 0);

    static DownloadCounts of(DownloadState state, long count) {
        return switch (state) {
            case COMPLETE -> new DownloadCounts(count, 0, 0, 0);
            case BROKEN_OFF -> new DownloadCounts(0, count, 0, 0);
            case HANDED_OVER -> new DownloadCounts(0, 0, count, 0);
            case STARTED -> new DownloadCounts(0, 0, 0, count);
        };
    }

    DownloadCounts plus(DownloadCounts that) {
        return new DownloadCounts(
                complete + that.complete,
                brokenOff + that.brokenOff,
                handedOver + that.handedOver,
                running + that.running);
    }

    /** Those of which nobody saw the end: sent by a front server, or still on their way. */
    public long unknown() {
        return handedOver + running;
    }

    public long all() {
        return complete + brokenOff + handedOver + running;
    }
}
