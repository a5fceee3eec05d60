package groundbass.post;

/** A letter was not accepted. The message is for the educator's eyes and holds no text of the letter. */
public final class SendingFailed extends Exception {
    private static final long serialVersionUID = 1L;

    private final boolean isFinal;
    private final boolean isOfAddress;

    public SendingFailed(String what) {
        super(what);
        this.isFinal = false;
        this.isOfAddress = false;
    }

    SendingFailed(Exception cause) {
        this(cause, false, false);
    }

    private SendingFailed(Exception cause, boolean isFinal, boolean isOfAddress) {
        super(cause.getClass().getSimpleName() + ": " + cause.getMessage(), cause);
        this.isFinal = isFinal;
        this.isOfAddress = isOfAddress;
    }

    /** The server will say the same to the same letter however often it is tried. */
    static SendingFailed forGood(Exception cause) {
        return new SendingFailed(cause, true, false);
    }

    /** The server knows no such reader, or takes nothing for them, whatever the letter says. */
    static SendingFailed forThisAddress(Exception cause) {
        return new SendingFailed(cause, true, true);
    }

    /** Whether trying again is of no use. */
    public boolean isFinal() {
        return isFinal;
    }

    /** Whether it was the reader's address that was refused, for good. */
    boolean isOfAddress() {
        return isOfAddress;
    }
}
