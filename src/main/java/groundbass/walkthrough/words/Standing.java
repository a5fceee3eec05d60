package groundbass.walkthrough.words;

import groundbass.score.ChordAt;
import groundbass.score.Direction;
import groundbass.score.Direction.Hairpin;
import groundbass.score.Direction.Loudness;
import groundbass.score.Direction.Words;
import groundbass.score.Dynamic;
import groundbass.score.Fraction;
import groundbass.theory.ChordSymbol;
import groundbass.writing.WrittenBar;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Function;

/** What stands above and below the staff of a bar: chords, loudness and words, each with its count where it comes later. */
public final class Standing {
    private final Wording words;
    private final WrittenBar written;
    private final Function<ChordAt, Optional<ChordSymbol>> chords;
    private final Optional<Dynamic> loudness;

    /**
     * @param chords which chord is said, if any
     * @param loudness that holds where the bar begins, and is not said again
     */
    public Standing(
            Wording words,
            WrittenBar written,
            Function<ChordAt, Optional<ChordSymbol>> chords,
            Optional<Dynamic> loudness) {
        this.words = words;
        this.written = written;
        this.chords = chords;
        this.loudness = loudness;
    }

    /** From one moment of the bar until before another. */
    public List<String> between(Fraction from, Fraction to) {
        var said = new ArrayList<String>();
        for (var chord : written.bar().chords()) {
            if (isWithin(chord.at(), from, to)) {
                boolean first = said.isEmpty();
                chords.apply(chord)
                        .map(symbol -> first ? words.over(symbol) : words.overThen(symbol))
                        .ifPresent(text -> said.add(placed(text, chord.at(), from)));
            }
        }
        written.bar().directions().stream()
                .filter(direction -> isWithin(direction.at(), from, to))
                .filter(direction -> !isRunning(direction))
                .forEach(direction -> said.add(placed(direction(direction), direction.at(), from)));
        return said;
    }

    /** Whether anything is written there, said or not. */
    public boolean isMarked(Fraction from, Fraction to) {
        var bar = written.bar();
        return bar.chords().stream().anyMatch(chord -> isWithin(chord.at(), from, to))
                || bar.directions().stream().anyMatch(direction -> isWithin(direction.at(), from, to));
    }

    /** Whether a bar begins with the sign of what holds already, as the copy of another does. */
    private boolean isRunning(Direction direction) {
        return direction instanceof Loudness said
                && loudness.equals(Optional.of(said.dynamic()))
                && written.bar().directions().stream()
                        .noneMatch(
                                other -> !(other instanceof Words) && other.at().isBefore(said.at()));
    }

    private static boolean isWithin(Fraction at, Fraction from, Fraction to) {
        return !at.isBefore(from) && at.isBefore(to);
    }

    private String placed(String what, Fraction at, Fraction from) {
        if (at.equals(from)) {
            return what;
        }
        return words.count(at, written.inForce().meter())
                .map(count -> words.say("from", what, count))
                .orElseGet(() -> words.say("later", what));
    }

    private String direction(Direction direction) {
        if (direction instanceof Hairpin hairpin) {
            return words.say("hairpin." + hairpin.way().word());
        }
        return direction instanceof Loudness loudness
                ? words.say("dynamic." + loudness.dynamic())
                : words.say("words", ((Words) direction).text());
    }
}
