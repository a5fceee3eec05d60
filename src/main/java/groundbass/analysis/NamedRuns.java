package groundbass.analysis;

import groundbass.score.Fraction;
import groundbass.score.Line;
import groundbass.score.Passage;
import groundbass.score.Position;
import groundbass.theory.Fragment;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Finds the runs that have a name: the longest first, none inside another, without a rest in them. */
final class NamedRuns {
    private static final int LONGEST = 32;

    private final Line line;
    private final List<Onset> onsets;
    private final Map<Position, List<Tone>> byMoment;

    NamedRuns(Line line, List<Onset> onsets, Map<Position, List<Tone>> byMoment) {
        this.line = line;
        this.onsets = onsets;
        this.byMoment = byMoment;
    }

    List<Run> all() {
        var runs = new ArrayList<Run>();
        int from = 0;
        while (from < onsets.size()) {
            var run = longestFrom(from);
            run.ifPresent(runs::add);
            // the last note of a run may begin the next
            from += run.map(found -> found.notes().size() - 1).orElse(1);
        }
        return List.copyOf(runs);
    }

    private Optional<Run> longestFrom(int from) {
        int to = oneWay(from);
        for (int end = to; end - from >= Fragment.FEWEST_OF_CHORD; end--) {
            var run = run(from, end);
            if (run.isPresent()) {
                return run;
            }
        }
        return Optional.empty();
    }

    /** The end of the notes that follow one another in one direction. */
    private int oneWay(int from) {
        int to = from + 1;
        int way = 0;
        while (to < onsets.size() && to - from < LONGEST && follow(onsets.get(to - 1), onsets.get(to))) {
            int step = Integer.signum(midi(to) - midi(to - 1));
            if (step == 0 || (way != 0 && step != way)) {
                break;
            }
            way = step;
            to++;
        }
        return to;
    }

    private int midi(int index) {
        return onsets.get(index).notes().get(0).midi();
    }

    private static boolean follow(Onset one, Onset next) {
        Fraction silence = next.at().minus(one.end());
        return one.notes().size() == 1 && next.notes().size() == 1 && silence.isZero();
    }

    private Optional<Run> run(int from, int to) {
        var tones = onsets.subList(from, to).stream()
                .map(onset -> byMoment.get(onset.position()).get(0))
                .toList();
        boolean oneChord = tones.stream().map(Tone::chord).distinct().count() == 1;
        boolean oneKey = tones.stream().map(Tone::key).distinct().count() == 1;
        var first = tones.get(0);
        return Fragment.of(
                        first.key(),
                        oneChord ? first.chord() : Optional.empty(),
                        tones.stream().map(Tone::pitch).toList())
                .filter(fragment -> oneKey)
                .map(fragment ->
                        new Run(passage(from, to), tones.stream().map(Tone::at).toList(), fragment));
    }

    private Passage passage(int from, int to) {
        var last = onsets.get(to - 1);
        var end = last.position().at().plus(last.notes().get(0).note().length());
        int bar = last.position().bar();
        return new Passage(
                onsets.get(from).position(),
                new Position(bar, end.min(line.bar(bar).to())));
    }
}
