package groundbass.remark;

import groundbass.text.Message;
import java.util.List;
import java.util.Optional;

/** Lists several things of which one is meant. */
public final class Choice {
    private Choice() {}

    /** {@code 5}, {@code 5 or 7}, {@code 5, 7 or 8}; empty for none. */
    public static Optional<Message> of(List<Message> all) {
        if (all.size() < 2) {
            return all.stream().findFirst();
        }
        var last = all.get(all.size() - 1);
        return all.subList(0, all.size() - 1).stream()
                .reduce((list, next) -> Message.of("remark.list", list, next))
                .map(list -> Message.of("remark.or", list, last));
    }

    /** The same of words as they are typed. */
    public static Optional<Message> ofWords(List<String> words) {
        return of(words.stream().map(word -> Message.of("remark.typed", word)).toList());
    }
}
