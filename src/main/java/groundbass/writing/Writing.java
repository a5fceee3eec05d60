package groundbass.writing;

import groundbass.score.Bar;
import groundbass.score.InForce;
import groundbass.score.Line;
import java.util.ArrayList;
import java.util.List;

/** Decides how a line is written down, once for everything that prints or tells it. */
public final class Writing {
    private Writing() {}

    /**
     * Every line can be written. Each note of the score becomes one chain of tied heads; each voice fills its bar
     * exactly. Time is linear in the number of bars.
     */
    public static WrittenLine of(Line line) {
        var inForce = line.inForce();
        var parts = Parts.of(line);
        var accidentals = new Accidentals(line.header().key());
        var bars = new ArrayList<WrittenBar>();
        for (int i = 0; i < line.bars().size(); i++) {
            var bar = line.bars().get(i);
            var voices = accidentals.sign(inForce.get(i), voices(bar, inForce.get(i), parts.get(i)));
            boolean simile = i > 0 && Simile.of(bar, inForce.get(i), bars.get(i - 1));
            bars.add(new WrittenBar(inForce.get(i), bar, voices, simile));
        }
        return new WrittenLine(line, bars);
    }

    private static List<Voice> voices(Bar bar, InForce inForce, List<Part> parts) {
        var pulse = new Pulse(inForce.meter());
        return Voicing.of(pulse, bar, parts).stream()
                .map(spans -> VoiceWriting.of(pulse, bar, spans))
                .toList();
    }
}
