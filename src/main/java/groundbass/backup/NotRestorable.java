package groundbass.backup;

/** Why a file cannot be restored; its message says what to do and is told as it stands. */
public final class NotRestorable extends RuntimeException {
    private static final long serialVersionUID = 1L;

    NotRestorable(String message) {
        super(message);
    }

    NotRestorable(String message, Throwable cause) {
        super(message, cause);
    }
}
