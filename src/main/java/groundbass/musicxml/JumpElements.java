package groundbass.musicxml;

import groundbass.score.Bar;
import groundbass.score.Repeats;
import groundbass.score.Roadmap.From;
import groundbass.score.Roadmap.Jump;
import java.util.List;

/** The signs of jumps, each with what it means to whoever plays the file (rule: jump-signs). */
final class JumpElements {
    /** A line has one sign and one coda, so each needs no name of its own. */
    private static final String SEGNO = "segno";

    private static final String CODA = "coda";

    private JumpElements() {}

    static void add(List<Bar> bars, DirectionsByBar moments) {
        for (int i = 0; i < bars.size(); i++) {
            before(i, bars.get(i), moments);
            after(i, bars.get(i), moments);
        }
    }

    private static void before(int index, Bar bar, DirectionsByBar moments) {
        var roadmap = bar.repeats().roadmap();
        if (roadmap.segno()) {
            var sound = Node.empty("sound").with(SEGNO, SEGNO);
            moments.add(
                    index, bar.from(), DirectionElement.above(Node.empty(SEGNO)).sounding(sound));
        }
        if (roadmap.coda()) {
            var sound = Node.empty("sound").with(CODA, CODA);
            moments.add(
                    index, bar.from(), DirectionElement.above(Node.empty(CODA)).sounding(sound));
        }
    }

    private static void after(int index, Bar bar, DirectionsByBar moments) {
        var roadmap = bar.repeats().roadmap();
        if (roadmap.toCoda()) {
            moments.add(index, bar.to(), words("To Coda", "tocoda", CODA, 1));
        }
        if (roadmap.fine()) {
            moments.add(index, bar.to(), words("Fine", "fine", "yes", 1));
        }
        roadmap.jump().ifPresent(jump -> moments.add(index, bar.to(), jump(jump, passes(bar.repeats()))));
    }

    /** How often a bar is played before a jump behind it is taken: one may stand at the end of a repeat, or behind it. */
    private static int passes(Repeats signs) {
        return signs.end().map(end -> end.times().orElse(2)).orElse(1);
    }

    private static DirectionElement jump(Jump jump, int passes) {
        return jump.from() == From.CAPO
                ? words(jump.printed(), "dacapo", "yes", passes)
                : words(jump.printed(), "dalsegno", SEGNO, passes);
    }

    /** By itself a jump is taken the first time that one comes to it, so a repeat that ends there must be named. */
    private static DirectionElement words(String text, String means, String value, int pass) {
        var sound = Node.empty("sound").with(means, value);
        return DirectionElement.above(Node.text("words", text).with("font-style", "italic"))
                .sounding(pass == 1 ? sound : sound.with("time-only", pass));
    }
}
