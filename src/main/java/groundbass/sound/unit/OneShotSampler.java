package groundbass.sound.unit;

import groundbass.signal.SampleRate;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;

/** Ready samples, each played once at its moment; one that is choked fades quickly. */
public final class OneShotSampler implements Unit {
    private static final double CHOKE_SECONDS = 0.03;

    private final List<Shot> shots;
    private final List<Running> running = new ArrayList<>();
    private final float choke;
    private int next;
    private long now;

    /**
     * @param at from which sample on
     * @param until when it is choked; {@link Long#MAX_VALUE} for never
     */
    public record Shot(long at, float[] samples, float gain, long until) {
        public static Shot of(long at, float[] samples, double gain) {
            return new Shot(at, samples, (float) gain, Long.MAX_VALUE);
        }
    }

    private static final class Running {
        private final Shot shot;
        private int index;
        private float gain;

        private Running(Shot shot) {
            this.shot = shot;
            this.gain = shot.gain();
        }
    }

    /** @param shots by moment */
    public OneShotSampler(SampleRate rate, List<Shot> shots) {
        this.shots = List.copyOf(shots);
        this.choke = (float) rate.decay(CHOKE_SECONDS);
    }

    @Override
    public void render(float[] out, int from, int count) {
        while (next < shots.size() && shots.get(next).at() < now + count) {
            running.add(new Running(shots.get(next++)));
        }
        for (Iterator<Running> each = running.iterator(); each.hasNext(); ) {
            if (isOver(each.next(), out, from, count)) {
                each.remove();
            }
        }
        now += count;
    }

    private boolean isOver(Running run, float[] out, int from, int count) {
        var samples = run.shot.samples();
        int first = (int) Math.max(0, run.shot.at() - now);
        int last = Math.min(count, first + samples.length - run.index);
        int choked = (int) Math.max(first, Math.min(last, run.shot.until() - now));
        int ahead = run.index - first;
        float gain = run.gain;
        for (int i = first; i < choked; i++) {
            out[from + i] += samples[ahead + i] * gain;
        }
        for (int i = choked; i < last; i++) {
            run.gain *= choke;
            out[from + i] += samples[ahead + i] * run.gain;
        }
        run.index += last - first;
        return run.index >= samples.length;
    }
}
