package groundbass.analysis;

import groundbass.theory.Key;
import groundbass.theory.NoteName;
import groundbass.theory.Spelling;
import java.util.HashMap;
import java.util.Map;

/** The spelling of pitch classes in keys, each looked up once. */
final class Names {
    private static final int OCTAVE = 60;

    private final Map<Key, NoteName[]> rising = new HashMap<>();
    private final Map<Key, NoteName[]> falling = new HashMap<>();

    NoteName name(Key key, int midi, int next) {
        boolean up = next > midi;
        var names = (up ? rising : falling).computeIfAbsent(key, each -> names(each, up));
        return names[Math.floorMod(midi, 12)];
    }

    private static NoteName[] names(Key key, boolean up) {
        var names = new NoteName[12];
        for (int i = 0; i < names.length; i++) {
            int midi = OCTAVE + i;
            names[i] = Spelling.of(key, midi, up ? midi + 1 : midi).name();
        }
        return names;
    }
}
