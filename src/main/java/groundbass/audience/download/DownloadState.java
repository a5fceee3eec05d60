package groundbass.audience.download;

import groundbass.identity.TextValue;

/** How far a download has come. */
public enum DownloadState implements TextValue {
    /** Bytes are on their way, or the next range is awaited. */
    STARTED("started"),
    /** Every byte was sent, in one piece or in ranges. */
    COMPLETE("complete"),
    /** The reader went away before the end; may still come back for the rest. */
    BROKEN_OFF("broken off"),
    /** Sent by a front server: whether it arrived whole is not known here. */
    HANDED_OVER("handed over");

    private final String value;

    DownloadState(String value) {
        this.value = value;
    }

    @Override
    public String value() {
        return value;
    }

    /** Where the message bundle names it. */
    public String key() {
        return "audience.download." + value.replace(" ", "");
    }

    /** Whether a request for the whole file begins a download of its own. */
    boolean isOver() {
        return switch (this) {
            case COMPLETE, HANDED_OVER -> true;
            case STARTED, BROKEN_OFF -> false;
        };
    }
}
