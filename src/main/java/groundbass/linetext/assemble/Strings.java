package groundbass.linetext.assemble;

import groundbass.score.Fraction;
import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** The last sound of each string, from bar to bar. */
final class Strings {
    private final Map<Integer, SoundingNote> last = new HashMap<>();
    private final Set<Integer> played = new HashSet<>();

    /** Whether anything was ever played on this string. */
    boolean wasPlayed(int string) {
        return played.contains(string);
    }

    /** The sound that has not ended before {@code at}, or ends then. */
    Optional<SoundingNote> upTo(int string, Fraction at) {
        return Optional.ofNullable(last.get(string))
                .filter(sound -> !sound.end().isBefore(at));
    }

    boolean anySoundsAfter(Fraction at) {
        return last.values().stream().anyMatch(sound -> sound.end().isAfter(at));
    }

    /** Carries on every sound that ends at {@code at}, but for those of some strings; false where there is none. */
    boolean holdAll(Fraction at, Fraction to, Collection<Integer> except) {
        boolean held = false;
        for (var entry : last.entrySet()) {
            if (entry.getValue().end().equals(at) && !except.contains(entry.getKey())) {
                entry.getValue().endAt(to);
                held = true;
            }
        }
        return held;
    }

    boolean hold(int string, Fraction at, Fraction to) {
        var sound = Optional.ofNullable(last.get(string))
                .filter(found -> found.end().equals(at));
        sound.ifPresent(found -> found.endAt(to));
        return sound.isPresent();
    }

    void begin(SoundingNote sound) {
        last.put(sound.note().string(), sound);
        played.add(sound.note().string());
    }

    /** Nothing that sounded so far can be held on. */
    void close() {
        last.clear();
    }
}
