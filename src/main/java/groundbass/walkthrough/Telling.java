package groundbass.walkthrough;

import groundbass.analysis.Analysis;
import groundbass.analysis.Run;
import groundbass.score.Fraction;
import groundbass.score.Line;
import groundbass.walkthrough.words.Wording;
import java.util.ArrayList;
import java.util.List;

/** What the bars of one telling share: the words, and what is worth a sentence of its own where. */
record Telling(Wording words, Line line, Firsts firsts, List<Run> runs, HardSpots hard, HandPositions hand) {
    static Telling of(Line line, Wording words) {
        return new Telling(
                words, line, new Firsts(line), Analysis.of(line).runs(), new HardSpots(line), new HandPositions(line));
    }

    /** What is new, what begins and what is hard in a stretch of the bar of this index. */
    List<String> remarks(int bar, Fraction from, Fraction to) {
        var remarks = new ArrayList<String>();
        var names = firsts.techniques(bar, from, to).stream()
                .map(feature -> words.say("new." + feature))
                .toList();
        if (!names.isEmpty()) {
            remarks.add(words.say("new", words.list(names)));
        }
        int number = bar + line.firstNumber();
        runs.stream()
                .filter(run -> run.passage().from().bar() == number)
                .filter(run -> !run.passage().from().at().isBefore(from)
                        && run.passage().from().at().isBefore(to))
                .forEach(run -> remarks.add(
                        words.say("run.named", words.said(run.fragment().said()))));
        remarks.addAll(hard.in(bar, from, to, words));
        if (from.equals(line.bars().get(bar).from())) {
            hand.in(bar, words).ifPresent(remarks::add);
        }
        return remarks;
    }
}
