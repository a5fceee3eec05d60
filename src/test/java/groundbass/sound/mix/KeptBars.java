package groundbass.sound.mix;

import java.util.HashMap;
import java.util.List;
import java.util.Map;

/** Each bar made once, however often a mix of it is measured. */
final class KeptBars implements StemBars {
    private final StemBars sounds;
    private final Map<List<Object>, BarSound> known = new HashMap<>();

    KeptBars(StemBars sounds) {
        this.sounds = sounds;
    }

    @Override
    public BarSound bar(Stem stem, int bar) {
        return known.computeIfAbsent(List.of(stem, bar), any -> sounds.bar(stem, bar));
    }

    @Override
    public BarSound countIn() {
        return sounds.countIn();
    }

    @Override
    public int lead(int bar) {
        return sounds.lead(bar);
    }
}
