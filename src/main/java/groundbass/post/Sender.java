package groundbass.post;

/** A way out of the house. Implementations are called by one thread at a time for one letter. */
public interface Sender {
    /**
     * Hands the letter over.
     *
     * @return {@link Delivery#SENT} or {@link Delivery#ON_DESK}
     * @throws SendingFailed when it was not accepted; it will be tried again later
     */
    Delivery send(MessageId id, Message message) throws SendingFailed;
}
