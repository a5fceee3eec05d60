package groundbass.intake.draft;

import groundbass.score.Bar;
import groundbass.score.ChordAt;
import groundbass.score.Direction;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * What is said in one bar, as a bar may say it: at one moment one chord, one loudness, one hairpin, no words twice.
 * Mutable; one for a bar.
 */
public final class SaidOnce {
    private final Map<Object, ChordAt> chords = new LinkedHashMap<>();
    private final Map<Object, Direction> directions = new LinkedHashMap<>();

    /** Of two chords at one moment the later one stays. */
    public void add(ChordAt chord) {
        chords.put(chord.at(), chord);
    }

    /** @return whether there was room for it */
    public boolean add(Direction direction) {
        Object key = direction instanceof Direction.Words ? direction : List.of(direction.getClass(), direction.at());
        return directions.size() < Bar.MOST_DIRECTIONS && directions.putIfAbsent(key, direction) == null;
    }

    public Bar in(Bar bar) {
        return bar.withChords(List.copyOf(chords.values())).withDirections(List.copyOf(directions.values()));
    }
}
