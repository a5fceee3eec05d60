package groundbass.intake.notice;

import groundbass.intake.notice.Notice.Weight;
import groundbass.text.Message;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeSet;

/** Gathers notices of one file: what is said of several bars becomes one of them. Mutable; one for a file. */
public final class NoticeList {
    /** A file that calls for more kinds of them is hardly music; what follows is counted together. */
    private static final int MOST = 300;

    private final Map<Said, TreeSet<Integer>> said = new LinkedHashMap<>();

    private record Said(Weight weight, Message message) {}

    /** About the whole line. */
    public void guessed(Message message) {
        add(Weight.GUESSED, message);
    }

    public void changed(Message message) {
        add(Weight.CHANGED, message);
    }

    public void leftOut(Message message) {
        add(Weight.LEFT_OUT, message);
    }

    /** @param bar its index in the line, from 0 */
    public void guessed(int bar, Message message) {
        add(Weight.GUESSED, message).add(bar);
    }

    /** @param bar its index in the line, from 0 */
    public void changed(int bar, Message message) {
        add(Weight.CHANGED, message).add(bar);
    }

    /** @param bar its index in the line, from 0 */
    public void leftOut(int bar, Message message) {
        add(Weight.LEFT_OUT, message).add(bar);
    }

    private TreeSet<Integer> add(Weight weight, Message message) {
        var one = new Said(weight, message);
        boolean full = said.size() >= MOST && !said.containsKey(one);
        return said.computeIfAbsent(
                full ? new Said(Weight.LEFT_OUT, Message.of("intake.notice.more")) : one, each -> new TreeSet<>());
    }

    /**
     * What is lost first, what was guessed last.
     *
     * @param firstNumber the number of the line's first bar
     */
    public List<Notice> list(int firstNumber) {
        return said.entrySet().stream()
                .map(entry -> new Notice(
                        entry.getKey().weight(),
                        entry.getValue().stream()
                                .map(index -> index + firstNumber)
                                .toList(),
                        entry.getKey().message()))
                .sorted(Comparator.comparing(Notice::weight))
                .toList();
    }
}
