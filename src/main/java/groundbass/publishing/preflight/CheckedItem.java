package groundbass.publishing.preflight;

import groundbass.text.Message;
import java.util.List;
import java.util.Locale;

/**
 * How a lesson stands at one of the checkpoints.
 *
 * @param looked what was looked at, as a sentence
 * @param remarks all that is to be said of it, accepted or not
 * @param holding those of them that keep the lesson back
 */
public record CheckedItem(Checkpoint point, Message looked, List<LessonRemark> remarks, List<LessonRemark> holding) {
    /** In how far it is in order. */
    public enum State {
        /** Nothing is to be said of it, or all of it was accepted. */
        FINE,
        /** Something is worth a look, and keeps nothing back. */
        OPEN,
        /** The lesson does not go out before this is mended or accepted. */
        KEEPS_BACK;

        /** The end of its class and of its message key. */
        public String word() {
            return name().toLowerCase(Locale.ROOT).replace('_', '-');
        }
    }

    public CheckedItem {
        remarks = List.copyOf(remarks);
        holding = List.copyOf(holding);
    }

    public State state() {
        if (!holding.isEmpty()) {
            return State.KEEPS_BACK;
        }
        boolean open = remarks.stream().anyMatch(remark -> !remark.blocks() && !remark.asks());
        return open ? State.OPEN : State.FINE;
    }
}
