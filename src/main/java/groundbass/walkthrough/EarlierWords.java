package groundbass.walkthrough;

import groundbass.walkthrough.Earlier.Moved;
import groundbass.walkthrough.words.Wording;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** A bar, or bars that follow one another, told by bars that came before. */
final class EarlierWords {
    private final Wording words;

    EarlierWords(Wording words) {
        this.words = words;
    }

    /**
     * A bar that follows from another.
     *
     * @param heading what stands before the colon
     * @param start   the name of its first note, where one sounds
     */
    String one(String heading, Earlier earlier, Optional<String> start) {
        int number = earlier.number();
        if (earlier instanceof Moved moved) {
            return words.say("moved", heading, bars(number, number), how(moved, start));
        }
        return number == 0 ? words.say("same.pickup", heading) : words.say("same", heading, String.valueOf(number));
    }

    /**
     * Beats that are played as the same beats of an earlier bar.
     *
     * @param start the name of their first note, where it begins the bar
     */
    String beats(Earlier earlier, Optional<String> start) {
        String number = String.valueOf(earlier.number());
        return earlier instanceof Moved moved
                ? words.say("leaning.moved", number, how(moved, start))
                : words.say("leaning", number);
    }

    /**
     * Bars that follow one another.
     *
     * @param earlier how the first of these bars follows; the others follow alike
     * @param hand    where the hand goes for them
     */
    String many(int first, int last, Earlier earlier, List<String> hand) {
        String numbers =
                words.say(last == first + 1 ? "bars.two" : "bars", String.valueOf(first), String.valueOf(last));
        String bars = hand.stream().reduce(numbers, (one, two) -> words.say("heading", one, two));
        String told = bars(earlier.number(), earlier.number() + last - first);
        return earlier instanceof Moved moved
                ? words.say("moved", bars, told, how(moved))
                : words.say("same.many", bars, told);
    }

    private String bars(int first, int last) {
        return first == last
                ? words.say("moved.bar", String.valueOf(first))
                : words.say(
                        last == first + 1 ? "moved.bars.two" : "moved.bars",
                        String.valueOf(first),
                        String.valueOf(last));
    }

    private String how(Moved moved, Optional<String> start) {
        String how = how(moved);
        return start.map(name -> words.say("moved.start", how, name)).orElse(how);
    }

    private String how(Moved moved) {
        var ways = new ArrayList<String>();
        if (moved.strings() != 0) {
            ways.add(words.counted(
                    moved.strings() > 0 ? "moved.strings.higher" : "moved.strings.lower", Math.abs(moved.strings())));
        }
        if (moved.frets() != 0) {
            ways.add(words.counted(moved.frets() > 0 ? "moved.frets.up" : "moved.frets.down", Math.abs(moved.frets())));
        }
        String shape = words.say("moved.shape", words.list(ways));
        return switch (moved.octaves()) {
            case 1 -> words.say("moved.octave.up", shape);
            case -1 -> words.say("moved.octave.down", shape);
            default -> shape;
        };
    }
}
