package groundbass.web.answer;

/**
 * Is told what becomes of a file that is sent. Nothing is told of HEAD, of 304 and of 416: no byte of the file leaves.
 * Exactly one of the last three follows {@link #starting}.
 */
public interface Transfer {
    /** Nobody wants to know. */
    Transfer UNOBSERVED = new Transfer() {};

    /** Before the first byte: whatever must be recorded has been when this returns. An exception stops the answer. */
    default void starting(ByteRange range) {}

    /** All {@code sent} bytes asked for have left this program. */
    default void completed(long sent) {}

    /** The reader went away, or reading failed, after {@code sent} bytes. */
    default void brokenOff(long sent) {}

    /** The front server sends the file; how that ends stays unknown. */
    default void handedOver() {}
}
