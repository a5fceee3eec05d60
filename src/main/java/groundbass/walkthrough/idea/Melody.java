package groundbass.walkthrough.idea;

import groundbass.analysis.Tone;
import groundbass.score.Fraction;
import groundbass.score.Line;
import groundbass.score.Ornaments.Mark;
import groundbass.score.Passage;
import groundbass.score.Passes.Played;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** The notes of a line that one hears as its melody, bar by bar, and which bar is heard after which. */
final class Melody {
    private final Line line;
    private final List<Tone> tones;
    private final List<Integer> played;

    Melody(Line line, List<Tone> tones) {
        this.line = line;
        this.tones = tones.stream().filter(tone -> !isGhost(line, tone)).toList();
        this.played = line.played().stream().map(Played::bar).toList();
    }

    private static boolean isGhost(Line line, Tone tone) {
        var at = tone.at();
        return line.bar(at.position().bar()).notes().stream()
                .filter(note -> note.onset().equals(at.position().at()) && note.string() == at.string())
                .anyMatch(note -> note.has(Mark.GHOST));
    }

    /** Those of the bar of this index. */
    List<Tone> bar(int index) {
        var passage = Passage.bar(index + line.firstNumber());
        return tones.stream()
                .filter(tone -> passage.contains(tone.at().position()))
                .toList();
    }

    /** The same, a pitch that is struck several times in a row once. */
    List<Tone> moving(int index) {
        var moving = new ArrayList<Tone>();
        for (var tone : bar(index)) {
            int last = moving.size() - 1;
            if (last < 0 || moving.get(last).pitch().midi() != tone.pitch().midi()) {
                moving.add(tone);
            }
        }
        return moving;
    }

    /** The bar that is heard after the bar of this index when it is first played; after the last one, the first. */
    int next(int index) {
        int at = played.indexOf(index);
        return at + 1 < played.size() ? played.get(at + 1) : played.get(0);
    }

    /** Whether nothing is heard after the bar of this index, unless one begins again. */
    boolean isLast(int index) {
        return played.indexOf(index) == played.size() - 1;
    }

    /** The note that begins the bar of this index, alone. */
    Optional<Tone> first(int index) {
        var bar = bar(index);
        boolean alone = bar.size() == 1
                || bar.size() > 1
                        && !bar.get(0).at().position().equals(bar.get(1).at().position());
        return bar.stream()
                .findFirst()
                .filter(tone -> alone
                        && tone.at()
                                .position()
                                .at()
                                .equals(line.bars().get(index).from()));
    }

    /** Where the bar of this index ends, counted from its first count. */
    Fraction end(int index) {
        return line.bars().get(index).to();
    }

    int number(int index) {
        return index + line.firstNumber();
    }
}
