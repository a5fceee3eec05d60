package groundbass.musicxml;

import groundbass.score.Bar;
import groundbass.score.Direction.Hairpin;
import groundbass.score.Direction.Loudness;
import groundbass.score.Direction.Words;
import groundbass.score.Hairpins;
import java.util.List;

/** Loudness, hairpins and the educator's words. */
final class WordElements {
    private WordElements() {}

    static void add(List<Bar> bars, DirectionsByBar moments) {
        for (int i = 0; i < bars.size(); i++) {
            for (var direction : bars.get(i).directions()) {
                if (direction instanceof Loudness loudness) {
                    var sign = Node.of("dynamics", Node.empty(loudness.dynamic().toString()));
                    moments.add(i, loudness.at(), DirectionElement.below(sign));
                } else if (direction instanceof Words words) {
                    var text = Node.text("words", words.text()).with("font-style", "italic");
                    moments.add(i, words.at(), DirectionElement.above(text));
                }
            }
        }
        for (var reach : Hairpins.of(bars)) {
            moments.add(
                    reach.bar(),
                    reach.hairpin().at(),
                    DirectionElement.below(wedge(reach.hairpin().way())));
            moments.add(reach.lastBar(), reach.end(), DirectionElement.below(wedge("stop")));
        }
    }

    private static Node wedge(Hairpin.Way way) {
        return switch (way) {
            case CRESCENDO -> wedge("crescendo");
            case DIMINUENDO -> wedge("diminuendo");
        };
    }

    private static Node wedge(String type) {
        return Node.empty("wedge").with("type", type);
    }
}
