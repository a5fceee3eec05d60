package groundbass.walkthrough;

import groundbass.analysis.Analysis;
import groundbass.analysis.Run;
import groundbass.analysis.Tone;
import groundbass.analysis.ToneRole;
import groundbass.score.Fraction;
import groundbass.score.InForce;
import groundbass.score.Line;
import groundbass.score.Position;
import groundbass.walkthrough.words.RunWords;
import groundbass.walkthrough.words.Wording;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/** What the bars of one telling share: the words, and what is worth a sentence of its own where. */
record Telling(
        Wording words,
        Line line,
        List<InForce> inForce,
        Firsts firsts,
        List<Run> runs,
        List<Tone> tones,
        HardSpots hard,
        HandPositions hand,
        RunningLoudness loudness,
        Optional<String> usualRhythm) {
    /**
     * What a telling of a line needs.
     *
     * @param hand        where the fretting hand lies, as far as it is told
     * @param usualRhythm what is told once, and not with each beat that has it; empty where each is told
     */
    static Telling of(Line line, Wording words, HandPositions hand, Optional<String> usualRhythm) {
        var analysis = Analysis.of(line);
        return new Telling(
                words,
                line,
                line.inForce(),
                new Firsts(line),
                analysis.runs(),
                analysis.tones(),
                new HardSpots(line),
                hand,
                new RunningLoudness(line),
                usualRhythm);
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
                .forEach(run -> remarks.add(named(run)));
        leads(number, from, to).forEach(remarks::add);
        remarks.addAll(hard.in(bar, from, to, words));
        return remarks;
    }

    /** Where the hand goes for a bar, as it is said of all of it. */
    List<String> handMoves(int index) {
        var bar = line.bars().get(index);
        return hand.in(index, bar.from(), bar.to(), inForce.get(index).meter(), words);
    }

    private String named(Run run) {
        return new RunWords(words, this::count, tones).of(run);
    }

    private Optional<String> count(Position at) {
        return words.count(at.at(), inForce.get(at.bar() - line.firstNumber()).meter());
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
