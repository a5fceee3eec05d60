package groundbass.listening;

import groundbass.signal.Sound;
import java.util.ArrayList;
import java.util.List;

/**
 * What is heard in a recording, every hundredth of a second: how high its wave reaches, and how much sets in there
 * (spectral flux: the sum of the rises of the compressed magnitudes of all frequencies; Dixon 2006, "Onset detection
 * revisited"). And how loud the whole is.
 *
 * @param peaks from 0 to 1, and more where the recording does
 * @param onsets from 0 up; the mean of a whole recording is 1
 */
public record Hearing(Loudness loudness, List<Float> peaks, List<Float> onsets) {
    public static final int STEPS_A_SECOND = 100;

    private static final double WINDOW_SECONDS = 0.02;
    private static final float COMPRESSION = 100;

    public Hearing {
        peaks = List.copyOf(peaks);
        onsets = List.copyOf(onsets);
    }

    /** Listens to a sound to its end. */
    public static Hearing of(Sound sound) {
        return new Listener(sound).listen();
    }

    private static final class Listener {
        private final Sound sound;
        private final LoudnessMeter meter;
        private final int hop;
        private final float[] window;
        private final float[] hann;
        private final Fourier fourier;
        private float[] before;
        private float[] now;
        private final List<Float> peaks = new ArrayList<>();
        private final List<Float> onsets = new ArrayList<>();

        Listener(Sound sound) {
            int rate = sound.rate().hertz();
            this.sound = sound;
            this.meter = new LoudnessMeter(rate, sound.channels());
            this.hop = rate / STEPS_A_SECOND;
            int size = Integer.highestOneBit((int) (WINDOW_SECONDS * rate)) * 2;
            this.window = new float[size];
            this.hann = new float[size];
            for (int i = 0; i < size; i++) {
                hann[i] = (float) (0.5 - 0.5 * StrictMath.cos(2 * Math.PI * i / size));
            }
            this.fourier = new Fourier(size);
            this.before = new float[size / 2];
            this.now = new float[size / 2];
        }

        Hearing listen() {
            var block = new float[sound.channels()][hop];
            for (int count = filled(block); count > 0; count = filled(block)) {
                meter.add(block, count);
                step(block, count);
            }
            return new Hearing(meter.reading(), peaks, normalised());
        }

        /** Every step has its full length but for the last. */
        private int filled(float[][] block) {
            int count = sound.read(block);
            while (count > 0 && count < hop) {
                var rest = new float[block.length][hop - count];
                int more = sound.read(rest);
                for (int channel = 0; channel < block.length; channel++) {
                    System.arraycopy(rest[channel], 0, block[channel], count, more);
                }
                if (more == 0) {
                    break;
                }
                count += more;
            }
            return count;
        }

        private void step(float[][] block, int count) {
            System.arraycopy(window, hop, window, 0, window.length - hop);
            float peak = 0;
            for (int i = 0; i < hop; i++) {
                float sum = 0;
                for (float[] channel : block) {
                    float sample = i < count ? channel[i] : 0;
                    peak = Math.max(peak, Math.abs(sample));
                    sum += sample;
                }
                window[window.length - hop + i] = sum / block.length;
            }
            peaks.add(peak);
            onsets.add(flux());
        }

        private float flux() {
            var windowed = new float[window.length];
            for (int i = 0; i < windowed.length; i++) {
                windowed[i] = window[i] * hann[i];
            }
            var swap = before;
            before = now;
            now = swap;
            fourier.magnitudes(windowed, now);
            double flux = 0;
            for (int i = 0; i < now.length; i++) {
                now[i] = (float) StrictMath.log1p(COMPRESSION * now[i]);
                flux += Math.max(0, now[i] - before[i]);
            }
            return (float) flux;
        }

        private List<Float> normalised() {
            double mean =
                    onsets.stream().mapToDouble(Float::doubleValue).average().orElse(0);
            return onsets.stream()
                    .map(flux -> mean > 0 ? (float) (flux / mean) : 0f)
                    .toList();
        }
    }
}
