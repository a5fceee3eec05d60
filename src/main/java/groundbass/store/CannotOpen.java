package groundbass.store;

/** Why the stored site cannot be opened. The message is whole sentences for the operator, with what to do about it. */
public final class CannotOpen extends RuntimeException {
    private static final long serialVersionUID = 1L;

    public CannotOpen(String message) {
        super(message);
    }

    public CannotOpen(String message, Throwable cause) {
        super(message, cause);
    }
}
