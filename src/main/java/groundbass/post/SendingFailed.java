package groundbass.post;

/** A letter was not accepted. The message is for the educator's eyes and holds no text of the letter. */
public final class SendingFailed extends Exception {
    private static final long serialVersionUID = 1L;

    public SendingFailed(String what) {
        super(what);
    }

    SendingFailed(Exception cause) {
        super(cause.getClass().getSimpleName() + ": " + cause.getMessage(), cause);
    }
}
