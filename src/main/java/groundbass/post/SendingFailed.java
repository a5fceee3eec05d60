package groundbass.post;

/** A letter was not accepted. The message is for the educator's eyes and holds no text of the letter. */
public final class SendingFailed extends Exception {
    private static final long serialVersionUID = 1L;

    private final boolean isFinal;

    public SendingFailed(String what) {
        super(what);
        this.isFinal = false;
    }

    SendingFailed(Exception cause) {
        this(cause, false);
    }

    private SendingFailed(Exception cause, boolean isFinal) {
        super(cause.getClass().getSimpleName() + ": " + cause.getMessage(), cause);
        this.isFinal = isFinal;
    }

    /** The server will say the same to the same letter however often it is tried. */
    static SendingFailed forGood(Exception cause) {
        return new SendingFailed(cause, true);
    }

    /** Whether trying again is of no use. */
    public boolean isFinal() {
        return isFinal;
    }
}
