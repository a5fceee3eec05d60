package groundbass.post;

import groundbass.identity.TextValue;
import groundbass.store.RandomId;

/** Names a letter of the outbox; also the left half of its Message-ID, so that a letter sent twice is seen as one. */
public record MessageId(String value) implements TextValue {
    static MessageId next() {
        return new MessageId(RandomId.next());
    }
}
