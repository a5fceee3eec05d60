package groundbass.walkthrough;

import groundbass.score.Fraction;
import groundbass.score.Line;
import java.util.ArrayList;
import java.util.List;

/** What the bars of one telling share: the words, and what is worth a sentence of its own where. */
record Telling(Vocabulary words, Line line, Firsts firsts, HardSpots hard) {
    static Telling of(Line line, Vocabulary words) {
        return new Telling(words, line, new Firsts(line), new HardSpots(line));
    }

    /** What is new and what is hard in a stretch of the bar of this index. */
    List<String> remarks(int bar, Fraction from, Fraction to) {
        var remarks = new ArrayList<String>();
        var names = firsts.techniques(bar, from, to).stream()
                .map(feature -> words.say("new." + feature))
                .toList();
        if (!names.isEmpty()) {
            remarks.add(words.say("new", words.list(names)));
        }
        remarks.addAll(hard.in(bar, from, to, words));
        return remarks;
    }
}
