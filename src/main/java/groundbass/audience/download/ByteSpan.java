package groundbass.audience.download;

/** The bytes of a file from one offset up to, not including, another. */
public record ByteSpan(long from, long until) {
    public ByteSpan {
        if (from < 0 || until < from) throw new IllegalArgumentException("not a span of bytes: " + from + "-" + until);
    }

    /** So many bytes from an offset on. */
    public static ByteSpan of(long from, long length) {
        return new ByteSpan(from, Math.addExact(from, length));
    }

    public long length() {
        return until - from;
    }

    boolean touches(ByteSpan that) {
        return from <= that.until && that.from <= until;
    }

    ByteSpan joinedWith(ByteSpan that) {
        return new ByteSpan(Math.min(from, that.from), Math.max(until, that.until));
    }

    @Override
    public String toString() {
        return from + "-" + until;
    }
}
