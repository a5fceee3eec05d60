package groundbass.writing;

import groundbass.score.Bar;
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
        var accidentals = new AccidentalMemory(line.header().key());
        var bars = new ArrayList<WrittenBar>();
        for (int i = 0; i < line.bars().size(); i++) {
            var bar = line.bars().get(i);
            var pulse = new Pulse(inForce.get(i).meter());
            var voicing = VoiceDivision.of(pulse, bar, parts.get(i));
            var voices = accidentals.sign(inForce.get(i), voices(pulse, bar, voicing));
            boolean simile = i > 0 && Simile.of(bar, inForce.get(i), bars.get(i - 1));
            bars.add(new WrittenBar(inForce.get(i), bar, voices, voicing.divided(), simile));
        }
        return new WrittenLine(line, bars);
    }

    private static List<Voice> voices(Pulse pulse, Bar bar, VoiceDivision.Voices voicing) {
        return voicing.spans().stream()
                .map(spans -> VoiceWriting.of(pulse, bar, spans))
                .toList();
    }
}
