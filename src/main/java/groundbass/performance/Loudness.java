package groundbass.performance;

import groundbass.score.Direction;
import groundbass.score.Dynamic;
import groundbass.score.Line;
import groundbass.score.Position;
import java.util.TreeMap;

/** Which dynamic holds where in the written line; mf before the first. */
final class Loudness {
    private final TreeMap<Position, Dynamic> changes = new TreeMap<>();

    Loudness(Line line) {
        int number = line.firstNumber();
        for (var bar : line.bars()) {
            for (var direction : bar.directions()) {
                if (direction instanceof Direction.Loudness loudness) {
                    changes.put(new Position(number, loudness.at()), loudness.dynamic());
                }
            }
            number++;
        }
    }

    Dynamic at(Position position) {
        var change = changes.floorEntry(position);
        return change == null ? Dynamic.MF : change.getValue();
    }
}
