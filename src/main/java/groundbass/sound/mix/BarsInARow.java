package groundbass.sound.mix;

import groundbass.performance.Performance;
import groundbass.signal.SampleRate;
import groundbass.sound.unit.Unit;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.function.Function;
import java.util.function.Supplier;

/** Bars of one stem, each laid down at its place while the tails of those before it ring on; rendered when they are due. */
final class BarsInARow implements Unit {
    private final List<Laid> bars;
    private final List<Running> running = new ArrayList<>();
    private int next;
    private long now;

    /** @param at the frame that its first sample falls on */
    record Laid(long at, Supplier<float[]> sound) {}

    private static final class Running {
        private final float[] samples;
        private final long at;

        private Running(Laid laid) {
            this.samples = laid.sound().get();
            this.at = laid.at();
        }

        boolean isOver(long now) {
            return now >= at + samples.length;
        }
    }

    /** @param bars by frame */
    BarsInARow(List<Laid> bars) {
        this.bars = List.copyOf(bars);
    }

    /** One stem of a performance, as both ears hear it. */
    static BarsInARow of(Performance performance, StemBars sounds, Stem stem) {
        return of(performance, sounds, stem, BarSound::samples);
    }

    static BarsInARow of(Performance performance, StemBars sounds, Stem stem, Function<BarSound, float[]> part) {
        var laid = new ArrayList<Laid>();
        for (int i = 0; i < performance.bars().size(); i++) {
            int bar = i;
            double start = performance.seconds(performance.bars().get(bar).start());
            laid.add(new Laid(SampleRate.CD.at(start) - sounds.lead(bar), () -> part.apply(sounds.bar(stem, bar))));
        }
        return new BarsInARow(laid);
    }

    @Override
    public void render(float[] out, int from, int count) {
        while (next < bars.size() && bars.get(next).at() < now + count) {
            running.add(new Running(bars.get(next++)));
        }
        for (Iterator<Running> each = running.iterator(); each.hasNext(); ) {
            var run = each.next();
            add(run, out, from, count);
            if (run.isOver(now + count)) {
                each.remove();
            }
        }
        now += count;
    }

    private void add(Running run, float[] out, int from, int count) {
        int first = (int) Math.max(0, run.at - now);
        int last = (int) Math.min(count, run.at + run.samples.length - now);
        int shift = (int) (now - run.at);
        for (int i = first; i < last; i++) {
            out[from + i] += run.samples[i + shift];
        }
    }
}
