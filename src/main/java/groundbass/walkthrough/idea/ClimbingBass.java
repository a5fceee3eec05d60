package groundbass.walkthrough.idea;

import groundbass.analysis.Tone;
import groundbass.walkthrough.words.Wording;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/** Chords whose first notes go by semitones, one way, from the middle of a bar over the bar line. */
final class ClimbingBass {
    private final Wording words;
    private final Melody melody;

    ClimbingBass(Wording words, Melody melody) {
        this.words = words;
        this.melody = melody;
    }

    /** Said at the last note of the bar of this index. */
    Optional<Remark> of(int index) {
        int next = melody.next(index);
        var bar = melody.bar(index);
        var starts = starts(bar);
        if (starts.size() < 2 || melody.isLast(index)) {
            return Optional.empty();
        }
        var last = starts.get(starts.size() - 1);
        int way = step(starts.get(starts.size() - 2), last);
        return melody.first(next)
                .filter(goal -> Math.abs(way) == 1 && step(last, goal) == way)
                .map(goal -> new Remark(
                        bar.get(bar.size() - 1).at().position(),
                        words.say(
                                way > 0 ? "bass.up" : "bass.down",
                                words.name(goal.pitch().name()),
                                String.valueOf(melody.number(next))),
                        bar.stream().map(tone -> tone.at().position()).toList()));
    }

    private static int step(Tone one, Tone other) {
        return other.pitch().midi() - one.pitch().midi();
    }

    /** The first note over each chord of a bar. */
    private static List<Tone> starts(List<Tone> bar) {
        return IntStream.range(0, bar.size())
                .filter(i -> i == 0 || !bar.get(i).chord().equals(bar.get(i - 1).chord()))
                .mapToObj(bar::get)
                .toList();
    }
}
