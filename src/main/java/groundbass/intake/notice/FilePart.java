package groundbass.intake.notice;

import groundbass.text.Message;
import java.util.Objects;
import java.util.OptionalInt;

/**
 * One of the parts or tracks of a file.
 *
 * @param number from 1, in the order of the file
 * @param name as the file has it; empty where it has none
 * @param channel from 1, where it is played on one
 * @param notes how many notes it has
 */
public record FilePart(int number, String name, OptionalInt channel, int notes) {
    public FilePart {
        Objects.requireNonNull(name);
        Objects.requireNonNull(channel);
    }

    public FilePart(int number, String name, int notes) {
        this(number, name, OptionalInt.empty(), notes);
    }

    /** What a person knows it by. */
    public Message called() {
        if (!name.isEmpty()) {
            return Message.of("intake.part.named", name);
        }
        return channel.isPresent()
                ? Message.of("intake.part.channel", channel.getAsInt())
                : Message.of("intake.part.unnamed");
    }

    /** To choose it by: {@code 2: Bass (64 notes)}. */
    public Message choice() {
        return Message.of("intake.part", number, called(), notes);
    }
}
