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
import java.util.stream.Stream;

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
        return between(from, to, from);
    }

    private List<String> between(Fraction from, Fraction to, Fraction first) {
        var said = chords(from, to, first);
        directions(from, to)
                .forEach(direction -> said.add(placed(direction(direction), "from", direction.at(), from, first)));
        return said;
    }

    /** Chords there, and what else stands where it begins or where its first note is played. */
    public List<String> atStart(Fraction from, Fraction to, Fraction first) {
        var said = chords(from, to, first);
        directions(from, to)
                .filter(direction -> isStart(direction, from, first))
                .forEach(direction -> said.add(direction(direction)));
        return said;
    }

    /** What else stands there, in sentences. */
    public List<String> later(Fraction from, Fraction to, Fraction first) {
        return directions(from, to)
                .filter(direction -> !isStart(direction, from, first))
                .map(direction -> placed(direction(direction), "from.on", direction.at(), from, first))
                .map(text -> words.say("sentence", text))
                .toList();
    }

    /** Whether more than one thing is said at the start. */
    public boolean isMuch(Fraction from, Fraction to, Fraction first) {
        long chords = written.bar().chords().stream()
                .filter(chord -> isWithin(chord.at(), from, to))
                .count();
        return chords
                        + directions(from, to)
                                .filter(direction -> isStart(direction, from, first))
                                .count()
                > 1;
    }

    private List<String> chords(Fraction from, Fraction to, Fraction first) {
        var said = new ArrayList<String>();
        for (var chord : written.bar().chords()) {
            if (isWithin(chord.at(), from, to)) {
                String key = isNumbered(chord.at()) ? "from.beat" : "from.chord";
                chords.apply(chord)
                        .map(words::over)
                        .ifPresent(text -> said.add(placed(text, key, chord.at(), from, first)));
            }
        }
        return said;
    }

    private Stream<Direction> directions(Fraction from, Fraction to) {
        return written.bar().directions().stream()
                .filter(direction -> isWithin(direction.at(), from, to))
                .filter(direction -> !isRunning(direction));
    }

    private static boolean isStart(Direction direction, Fraction from, Fraction first) {
        return direction.at().equals(from) || direction.at().equals(first);
    }

    /** Whether a moment is a beat that has a number of its own. */
    private boolean isNumbered(Fraction at) {
        var meter = written.inForce().meter();
        return meter.beatStart(at).equals(at) && meter.beats().stream().allMatch(counts -> counts == 1);
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

    private String placed(String what, String key, Fraction at, Fraction from, Fraction first) {
        if (at.equals(from) || at.equals(first)) {
            return what;
        }
        return words.count(at, written.inForce().meter())
                .map(count -> words.say(key, what, count))
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
