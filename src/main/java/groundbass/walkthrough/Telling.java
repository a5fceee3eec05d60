package groundbass.walkthrough;

import groundbass.analysis.Analysis;
import groundbass.analysis.Tone;
import groundbass.analysis.ToneRole;
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
import java.util.stream.IntStream;
import java.util.stream.Stream;

/** What the bars of one telling share: the words, and what is worth a sentence of its own where. */
record Telling(
        Wording words,
        Line line,
        List<InForce> inForce,
        Firsts firsts,
        List<Tone> tones,
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
        return new Telling(
                words,
                line,
                line.inForce(),
                new Firsts(line),
                tones,
                new BarIdea(line, tones, words),
                new HardSpots(line),
                new StringCrossings(line),
                hand,
                new RunningLoudness(line),
                usual,
                reading);
    }

    /** What is new and what is hard in a stretch of the bar of this index, each with what to do about it. */
    List<String> remarks(int bar, Fraction from, Fraction to) {
        var remarks = new ArrayList<String>();
        for (var feature : firsts.techniques(bar, from, to)) {
            remarks.add(words.say(
                    remarks.isEmpty() ? "new" : "new.also", words.say("new." + feature), words.say("how." + feature)));
        }
        leads(bar + line.firstNumber(), from, to).forEach(remarks::add);
        remarks.addAll(crossings.in(bar, from, to, words, notes(bar)));
        remarks.addAll(hard.in(bar, from, to, hand, words));
        return remarks;
    }

    /** The words for notes of a bar: a finger goes without saying where one has heard where the hand lies. */
    NoteWords notes(int index) {
        return new NoteWords(
                words, line.header().tuning(), note -> reading == Reading.IN_TURN && hand.isUnderFinger(index, note));
    }

    /** What a note from outside chord and key leads to. */
    private Stream<String> leads(int number, Fraction from, Fraction to) {
        return IntStream.range(0, tones.size() - 1)
                .filter(i -> tones.get(i).role() == ToneRole.APPROACH)
                .filter(i -> tones.get(i).at().position().bar() == number)
                .filter(i -> !tones.get(i).at().position().at().isBefore(from)
                        && tones.get(i).at().position().at().isBefore(to))
                .filter(i -> Math.abs(tones.get(i + 1).pitch().midi()
                                - tones.get(i).pitch().midi())
                        == 1)
                .mapToObj(i -> leads(tones.get(i), tones.get(i + 1)));
    }

    private String leads(Tone tone, Tone next) {
        String way = next.pitch().midi() > tone.pitch().midi() ? "leads.up" : "leads.down";
        return words.say(
                way, words.name(tone.pitch().name()), words.name(next.pitch().name()));
    }
}
