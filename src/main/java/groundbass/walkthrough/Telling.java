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
        NewTechniques techniques,
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
        var tones = Analysis.of(line).tones();
        var firsts = new Firsts(line);
        return new Telling(
                words,
                line,
                line.inForce(),
                firsts,
                new NewTechniques(line, firsts, words),
                new BarIdea(line, tones, words),
                new HardSpots(line),
                new StringCrossings(line, tones),
                hand,
                new RunningLoudness(line),
                usual,
                reading);
    }

    /** What is to be known before one plays what comes in a stretch of the bar of this index. */
    List<String> known(int bar, Fraction from, Fraction to) {
        var known = new ArrayList<String>();
        known.addAll(techniques.known(bar, from, to, notes(bar)));
        known.addAll(crossings.known(bar, from, to, words, notes(bar)));
        return known;
    }

    /** What is new and what is hard in a stretch of the bar of this index, each with what to do about it. */
    List<String> remarks(int bar, Fraction from, Fraction to) {
        var remarks = new ArrayList<String>();
        remarks.addAll(techniques.remarks(bar, from, to, notes(bar)));
        remarks.addAll(hard.in(bar, from, to, hand, words));
        remarks.addAll(crossings.remarks(bar, from, to, words));
        return remarks;
    }

    /** The words for notes of a bar: a finger goes without saying where one has heard where the hand lies. */
    NoteWords notes(int index) {
        return NoteWords.inOneBreath(
                words, line.header().tuning(), note -> reading == Reading.IN_TURN && hand.isUnderFinger(index, note));
    }
}
