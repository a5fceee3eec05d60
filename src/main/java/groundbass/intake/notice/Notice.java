package groundbass.intake.notice;

import groundbass.text.Message;
import java.util.List;
import java.util.Objects;

/**
 * One thing that a line has otherwise than the file it was read from.
 *
 * @param bars the numbers of the bars it is about, in order; empty where it is about the whole line
 */
public record Notice(Weight weight, List<Integer> bars, Message message) {
    /** What happened. */
    public enum Weight {
        /** A line cannot hold it. */
        LEFT_OUT("left-out"),
        /** The line has it otherwise. */
        CHANGED("changed"),
        /** The file does not say it, and a line must. */
        GUESSED("guessed");

        private final String word;

        Weight(String word) {
            this.word = word;
        }

        /** The key of its name in the message bundle. */
        public String messageKey() {
            return "intake.weight." + word;
        }
    }

    public Notice {
        Objects.requireNonNull(weight);
        bars = List.copyOf(bars);
        Objects.requireNonNull(message);
    }

    /** The whole sentence, with its bars: {@code Left out in bars 3-5, 8: slurs.} */
    public Message sentence() {
        var head = Message.of(weight.messageKey());
        return switch (bars.size()) {
            case 0 -> Message.of("intake.notice.line", head, message);
            case 1 -> Message.of("intake.notice.bar", head, ranges(), message);
            default -> Message.of("intake.notice.bars", head, ranges(), message);
        };
    }

    /** {@code 3-5, 8}. */
    private String ranges() {
        var text = new StringBuilder();
        for (int i = 0; i < bars.size(); i++) {
            int from = bars.get(i);
            while (i + 1 < bars.size() && bars.get(i + 1) == bars.get(i) + 1) {
                i++;
            }
            text.append(text.isEmpty() ? "" : ", ").append(from);
            text.append(bars.get(i) == from ? "" : "-" + bars.get(i));
        }
        return text.toString();
    }
}
