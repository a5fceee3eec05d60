package groundbass.audience.news;

import groundbass.identity.IdForm;
import groundbass.identity.TextValue;
import groundbass.store.RandomId;

/** Names somebody who gets the news of one series; it tells nothing about the person. */
public record NewsReaderId(String value) implements TextValue {
    public NewsReaderId {
        IdForm.require(value);
    }

    static NewsReaderId next() {
        return new NewsReaderId(RandomId.next());
    }

    @Override
    public String toString() {
        return value;
    }
}
