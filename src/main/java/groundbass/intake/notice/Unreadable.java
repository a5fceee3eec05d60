package groundbass.intake.notice;

import groundbass.text.Message;
import java.io.Serial;

/** That a file cannot be read at all, with a sentence for whoever chose it. */
public final class Unreadable extends Exception {
    @Serial
    private static final long serialVersionUID = 1;

    private final transient Message message;

    public Unreadable(Message message) {
        super(message.key());
        this.message = message;
    }

    public Unreadable(Message message, Throwable cause) {
        super(message.key(), cause);
        this.message = message;
    }

    /** What is wrong, and what to do. */
    public Message message() {
        return message;
    }
}
