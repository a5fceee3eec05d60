package groundbass.sound.keys;

import groundbass.sound.unit.Unit;
import java.util.ArrayList;
import java.util.List;

/** Soft tones, each begun at its moment. */
final class Tones implements Unit {
    private final List<Tone> tones;
    private final List<Tone> running = new ArrayList<>();
    private int next;
    private long now;

    /** @param at from which sample on */
    record Tone(long at, SoftTone sound) {}

    /** @param tones by moment */
    Tones(List<Tone> tones) {
        this.tones = List.copyOf(tones);
    }

    @Override
    public void render(float[] out, int from, int count) {
        while (next < tones.size() && tones.get(next).at() < now + count) {
            running.add(tones.get(next++));
        }
        for (var tone : running) {
            int skipped = (int) Math.max(0, tone.at() - now);
            tone.sound().render(out, from + skipped, count - skipped);
        }
        running.removeIf(tone -> tone.sound().isOver());
        now += count;
    }
}
