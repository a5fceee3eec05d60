package groundbass.walkthrough.stretch;

import groundbass.walkthrough.words.Wording;
import java.util.List;
import java.util.Optional;

/**
 * What is told of a stretch.
 *
 * @param rhythm parts of a heading
 * @param even   its rhythm in two words where its notes all have one value: {@code in eighths}
 */
public record Utterance(List<String> rhythm, String played, Optional<String> even, Extent extent) {
    /** How much there is of it. */
    public enum Extent {
        /** One stroke, as long as the stretch. */
        FILLING,
        /** One stroke that goes on or ends before. */
        ONE,
        OTHER
    }

    public Utterance(List<String> rhythm, String played) {
        this(rhythm, played, Optional.empty(), Extent.OTHER);
    }

    Utterance playing(String other) {
        return new Utterance(rhythm, other, even, Extent.OTHER);
    }

    public boolean isFilling() {
        return extent == Extent.FILLING;
    }

    /** The same of a stretch that goes on to where it ends: what is one stroke fills that. */
    public Utterance toItsEnd() {
        return extent == Extent.ONE ? new Utterance(List.of(), played, even, Extent.FILLING) : this;
    }

    /** In one breath, where two voices are told one after the other. */
    public String joined(Wording words) {
        return even.map(each -> words.say("rhythm.even", each, played)).orElseGet(() -> rhythm.stream()
                .reduce((one, two) -> words.say("heading", one, two))
                .map(each -> words.say("rhythm", each, played))
                .orElse(played));
    }
}
