package groundbass.script.thread.stage;

import groundbass.script.checking.Timeline.At;
import java.util.List;
import java.util.Optional;
import java.util.OptionalInt;

/**
 * What was spoken of last.
 *
 * @param bars the bars in hand; empty where nobody can be sure
 * @param beat the beat in hand
 * @param notes the notes last spoken of, in the order of the line
 * @param sure whether they are as they were described, so that nobody can have meant others
 * @param compared the bar that the one in hand was compared with
 */
public record Memory(List<Integer> bars, OptionalInt beat, List<At> notes, boolean sure, OptionalInt compared) {
    public static final Memory NOTHING =
            new Memory(List.of(), OptionalInt.empty(), List.of(), false, OptionalInt.empty());

    public Memory {
        bars = List.copyOf(bars);
        notes = List.copyOf(notes);
    }

    public Optional<Integer> bar() {
        return bars.size() == 1 ? Optional.of(bars.get(0)) : Optional.empty();
    }

    public Memory at(List<Integer> newBars, OptionalInt newBeat) {
        boolean moved = !newBars.equals(bars);
        return new Memory(
                newBars,
                moved || newBeat.isPresent() ? newBeat : beat,
                moved ? List.of() : notes,
                sure,
                moved ? OptionalInt.empty() : compared);
    }

    public Memory comparedWith(OptionalInt bar) {
        return bar.isPresent() ? new Memory(bars, beat, notes, sure, bar) : this;
    }

    public Memory of(List<At> newNotes, boolean areSure) {
        return new Memory(bars, beat, newNotes, areSure, compared);
    }

    /** Something was said that was not understood: what "it" is, nobody knows. */
    public Memory vague() {
        return new Memory(bars, beat, List.of(), false, compared);
    }
}
