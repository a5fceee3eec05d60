package groundbass.post;

/** A way out of the house. Several letters may leave at the same time, each by a thread of its own. */
public interface Sender {
    /**
     * Hands the letter over.
     *
     * @return {@link Delivery#SENT} or {@link Delivery#ON_DESK}
     * @throws SendingFailed when it was not accepted; it is tried again later, unless that was final
     */
    Delivery send(MessageId id, Mail message) throws SendingFailed;
}
