package groundbass.writing;

import groundbass.theory.NoteName;
import groundbass.theory.Pitch;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.IntStream;

/**
 * Names the pitches of one bar: what player, chord or scale decide, then double stops and slurs, then what moves on by a semitone;
 * the rest takes the name that its pitch class has elsewhere in the bar. So a pitch class has one name in a bar unless
 * the chord changes or the direction turns (rule: one-name-in-a-bar).
 */
final class BarSpelling {
    private final List<PitchToName> all;
    private final int[] source;
    private final NoteName[] names;

    private BarSpelling(List<PitchToName> all) {
        this.all = all;
        this.source = IntStream.range(0, all.size()).map(this::source).toArray();
        this.names = new NoteName[all.size()];
    }

    /** A name for each, in their order, which is that of time. */
    static List<Pitch> of(List<PitchToName> all) {
        var bar = new BarSpelling(all);
        bar.decide(PitchToName::firm);
        bar.fit();
        bar.decide(PitchToName::resolved);
        bar.fit();
        bar.settle();
        return IntStream.range(0, all.size())
                .mapToObj(i -> all.get(i).pitch(bar.names[i]))
                .toList();
    }

    private void decide(Function<PitchToName, Optional<NoteName>> choice) {
        for (int i = 0; i < names.length; i++) {
            names[i] = names[i] != null ? names[i] : choice.apply(all.get(i)).orElse(null);
        }
    }

    private void fit() {
        var before = names.clone();
        for (int i = 0; i < names.length; i++) {
            if (names[i] == null) {
                names[i] = all.get(i).fitting(company(i, before)).orElse(null);
            }
        }
    }

    /** What sounds together with a pitch, and what stands with it under one slur, as far as it is named. */
    private List<Pitch> company(int pitch, NoteName[] named) {
        var asked = all.get(pitch);
        return IntStream.range(0, named.length)
                .filter(i -> named[i] != null)
                .filter(i -> asked.soundsWith(all.get(i)) || source[pitch] == i || source[i] == pitch)
                .mapToObj(i -> all.get(i).pitch(named[i]))
                .toList();
    }

    /** The pitch from which the hand comes to this one: its grace note, else the one before on its string; -1 for none. */
    private int source(int pitch) {
        var asked = all.get(pitch);
        for (int i = pitch - 1; i >= 0; i--) {
            var earlier = all.get(i);
            if (earlier.leadsTo(asked) || asked.reached() && !earlier.grace() && earlier.string() == asked.string()) {
                return i;
            }
        }
        return -1;
    }

    private void settle() {
        Map<Integer, NoteName> inBar = new HashMap<>();
        Arrays.stream(names).filter(Objects::nonNull).forEach(name -> inBar.putIfAbsent(name.pitchClass(), name));
        for (int i = 0; i < names.length; i++) {
            var asked = all.get(i);
            if (names[i] == null) {
                names[i] = asked.fitting(company(i, names))
                        .orElseGet(() -> inBar.computeIfAbsent(asked.pitchClass(), pitchClass -> asked.standing()));
                inBar.putIfAbsent(asked.pitchClass(), names[i]);
            }
        }
    }
}
