package groundbass.walkthrough;

import groundbass.walkthrough.Earlier.Moved;
import groundbass.walkthrough.words.Wording;
import java.util.ArrayList;
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
     * @param start the name of its first note, where one sounds
     */
    String one(Earlier earlier, Optional<String> start) {
        int number = earlier.number();
        if (earlier instanceof Moved moved) {
            return words.say("moved", bars(number, number), how(moved, start));
        }
        return number == 0 ? words.say("same.pickup") : words.say("same", bars(number, number));
    }

    /**
     * Beats that are played as the same beats of an earlier bar.
     *
     * @param start the name of their first note, where it begins the bar
     */
    String beats(Earlier earlier, Optional<String> start) {
        String bar = bars(earlier.number(), earlier.number());
        return earlier instanceof Moved moved ? words.say("moved", bar, how(moved, start)) : words.say("leaning", bar);
    }

    /** {@code Bars 3 and 4}. */
    String name(int first, int last) {
        return words.say(last == first + 1 ? "bars.two" : "bars", String.valueOf(first), String.valueOf(last));
    }

    /**
     * So many bars that follow one another.
     *
     * @param earlier how the first of these bars follows; the others follow alike
     */
    String many(int bars, Earlier earlier) {
        String told = bars(earlier.number(), earlier.number() + bars - 1);
        return earlier instanceof Moved moved ? words.say("moved", told, how(moved)) : words.say("same", told);
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
        String shape = words.list(ways);
        return switch (moved.octaves()) {
            case 1 -> words.say("moved.octave.up", shape);
            case -1 -> words.say("moved.octave.down", shape);
            default -> shape;
        };
    }
}
