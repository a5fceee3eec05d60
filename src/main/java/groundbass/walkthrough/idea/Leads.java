package groundbass.walkthrough.idea;

import groundbass.analysis.Tone;
import groundbass.analysis.ToneRole;
import groundbass.score.Arrival;
import groundbass.score.Line;
import groundbass.score.Note;
import groundbass.walkthrough.words.Wording;
import java.util.List;
import java.util.stream.IntStream;

/** Notes from outside chord and key, each with what it leads to; where a slur tells that, nobody says it again. */
final class Leads {
    private final Wording words;
    private final Line line;
    private final List<Tone> tones;

    Leads(Wording words, Line line, List<Tone> tones) {
        this.words = words;
        this.line = line;
        this.tones = tones;
    }

    /** Of the bar of this number. */
    List<Remark> of(int number) {
        return IntStream.range(0, tones.size() - 1)
                .filter(i -> tones.get(i).at().position().bar() == number)
                .filter(i -> tones.get(i).role() == ToneRole.APPROACH)
                .filter(i -> Math.abs(step(i)) == 1 && !isSlurred(tones.get(i + 1)))
                .mapToObj(i -> new Remark(
                        tones.get(i).at().position(),
                        words.say(
                                step(i) > 0 ? "leads.up" : "leads.down",
                                words.name(tones.get(i).pitch().name()),
                                words.name(tones.get(i + 1).pitch().name())),
                        List.of()))
                .toList();
    }

    private int step(int index) {
        return tones.get(index + 1).pitch().midi() - tones.get(index).pitch().midi();
    }

    private boolean isSlurred(Tone tone) {
        var at = tone.at();
        return line.bar(at.position().bar()).notes().stream()
                .filter(note -> note.onset().equals(at.position().at()) && note.string() == at.string())
                .flatMap((Note note) -> note.arrival().stream())
                .anyMatch((Arrival arrival) -> !arrival.isGrace());
    }
}
