package groundbass.walkthrough;

import groundbass.analysis.Analysis;
import groundbass.score.Fraction;
import groundbass.score.InForce;
import groundbass.score.Line;
import groundbass.walkthrough.Walkthrough.Reading;
import groundbass.walkthrough.idea.BarIdea;
import groundbass.walkthrough.words.NoteWords;
import groundbass.walkthrough.words.RunningLoudness;
import groundbass.walkthrough.words.Wording;
import java.util.ArrayList;
import java.util.List;

/** What the bars of one telling share: the words, and what is worth a sentence of its own where. */
record Telling(
        Wording words,
        Line line,
        List<InForce> inForce,
        Firsts firsts,
        BarIdea idea,
        HardSpots hard,
        StringCrossings crossings,
        HandPositions hand,
        RunningLoudness loudness,
        UsualRhythm usual,
        Reading reading) {
    /**
     * What a telling of a line needs.
     *
     * @param hand  where the fretting hand lies, as far as it is told
     * @param usual what is told once, and not with each bar or beat that has it
     */
    static Telling of(Line line, Wording words, HandPositions hand, UsualRhythm usual, Reading reading) {
        return new Telling(
                words,
                line,
                line.inForce(),
                new Firsts(line),
                new BarIdea(line, Analysis.of(line).tones(), words),
                new HardSpots(line),
                new StringCrossings(line),
                hand,
                new RunningLoudness(line),
                usual,
                reading);
    }

    /** What is to be known before one plays what comes for the first time in a stretch of the bar of this index. */
    List<String> known(int bar, Fraction from, Fraction to) {
        return firsts.techniques(bar, from, to).stream()
                .filter(feature -> words.has("means." + feature))
                .map(feature -> words.say("means." + feature))
                .toList();
    }

    /** What is new and what is hard in a stretch of the bar of this index, each with what to do about it. */
    List<String> remarks(int bar, Fraction from, Fraction to) {
        var remarks = new ArrayList<String>();
        boolean also = false;
        for (var feature : firsts.techniques(bar, from, to)) {
            if (!words.has("means." + feature)) {
                String name = words.say("new." + feature);
                remarks.add(words.say(also ? "new.also" : "new", name, words.say("how." + feature)));
                also = true;
            }
        }
        remarks.addAll(hard.in(bar, from, to, hand, words));
        remarks.addAll(crossings.in(bar, from, to, words, notes(bar)));
        return remarks;
    }

    /** The words for notes of a bar: a finger goes without saying where one has heard where the hand lies. */
    NoteWords notes(int index) {
        return NoteWords.inOneBreath(
                words, line.header().tuning(), note -> reading == Reading.IN_TURN && hand.isUnderFinger(index, note));
    }
}
