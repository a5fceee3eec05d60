package groundbass.walkthrough.idea;

import groundbass.analysis.Tone;
import groundbass.score.Fraction;
import groundbass.walkthrough.words.Wording;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.stream.IntStream;

/** The last notes of a bar that lead step by step, one way, to the first note of the next. */
final class Walks {
    /** Semitones from note to note, and to the note that they lead to (common practice, no source). */
    private static final int WIDEST_STEP = 2;

    private static final int WIDEST_LAST = 3;
    private static final int FEWEST = 2;

    /** Of fewer that go by semitones, only the last leads. */
    private static final int FEWEST_CHROMATIC = 3;

    /** After more than a quarter nobody hears one note lead to the next (common practice, no source). */
    private static final Fraction LONGEST_WAIT = Fraction.of(1, 4);

    private final Wording words;
    private final Melody melody;

    Walks(Wording words, Melody melody) {
        this.words = words;
        this.melody = melody;
    }

    /** At the end of the bar of this index, of notes of its last breath. */
    Optional<Remark> of(int index, Breath breath) {
        if (breath.earlier()) {
            return Optional.empty();
        }
        Predicate<Tone> lastStep = breath::has;
        int next = melody.next(index);
        return melody.first(next).flatMap(goal -> to(goal, index, next, lastStep));
    }

    private Optional<Remark> to(Tone goal, int index, int next, Predicate<Tone> lastStep) {
        var bar = melody.bar(index);
        var struck = melody.bar(index).stream().filter(lastStep).toList();
        if (bar.isEmpty() || struck.isEmpty()) {
            return Optional.empty();
        }
        int first = first(bar, goal);
        var walk = bar.subList(first, bar.size()).stream().filter(lastStep).toList();
        int fewest = isChromatic(walk, goal) && !melody.isLast(index) ? FEWEST_CHROMATIC : FEWEST;
        if (walk.size() < fewest || !isWaitedFor(struck, index) || !isEnd(walk, struck)) {
            return Optional.empty();
        }
        return Optional.of(new Remark(
                walk.get(walk.size() - 1).at().position(),
                text(walk, goal, walk.size() == struck.size(), index, next),
                walk.stream().map(tone -> tone.at().position()).toList()));
    }

    private static boolean isChromatic(List<Tone> walk, Tone goal) {
        return !walk.isEmpty()
                && Math.abs(goal.pitch().midi() - walk.get(0).pitch().midi()) == walk.size();
    }

    private static boolean isEnd(List<Tone> walk, List<Tone> struck) {
        int before = struck.size() - walk.size();
        return before >= 0
                && IntStream.range(0, walk.size()).allMatch(i -> struck.get(before + i)
                        .pitch()
                        .equals(walk.get(i).pitch()));
    }

    /** The last note comes so late in its bar that the next bar follows at once. */
    private boolean isWaitedFor(List<Tone> struck, int index) {
        var last = struck.get(struck.size() - 1).at().position().at();
        return !melody.end(index).minus(last).isAfter(LONGEST_WAIT);
    }

    /** The index from which on notes go one way to the goal. */
    private static int first(List<Tone> bar, Tone goal) {
        int last = bar.size() - 1;
        int step = goal.pitch().midi() - bar.get(last).pitch().midi();
        if (step == 0 || Math.abs(step) > WIDEST_LAST) {
            return bar.size();
        }
        int first = last;
        while (first > 0 && isStep(bar.get(first - 1), bar.get(first), Integer.signum(step))) {
            first--;
        }
        return first;
    }

    private static boolean isStep(Tone one, Tone other, int way) {
        int step = (other.pitch().midi() - one.pitch().midi()) * way;
        var time = other.at().position().at().minus(one.at().position().at());
        return step > 0 && step <= WIDEST_STEP && !time.isAfter(LONGEST_WAIT);
    }

    private String text(List<Tone> walk, Tone goal, boolean all, int index, int next) {
        boolean rising = goal.pitch().midi() > walk.get(0).pitch().midi();
        String who = words.counted(all ? "walk.these" : "walk.last", walk.size());
        String way = words.say("walk." + (rising ? "up" : "down") + (isChromatic(walk, goal) ? ".half" : ""));
        String where = words.say("walk.to", words.name(goal.pitch().name()), String.valueOf(melody.number(next)));
        String said = words.say("walk", who, way, where);
        return melody.isLast(index) ? words.say("walk.round", said) : words.say("sentence", said);
    }
}
