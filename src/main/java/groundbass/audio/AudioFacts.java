package groundbass.audio;

import java.time.Duration;
import java.util.Objects;

/**
 * What a recording is, by its content.
 *
 * @param sampleRate samples a second of one channel
 * @param bitRate    bits a second of the whole; the mean where it varies
 * @param duration   to the millisecond
 */
public record AudioFacts(AudioFormat format, int sampleRate, int channels, int bitRate, Duration duration) {
    public AudioFacts {
        Objects.requireNonNull(format);
        Objects.requireNonNull(duration);
        if (sampleRate < 1 || channels < 1 || bitRate < 1) {
            throw new IllegalArgumentException("no sound: " + sampleRate + ", " + channels + ", " + bitRate);
        }
    }

    /** The duration of that many samples of one channel. */
    static Duration duration(long samples, int sampleRate) {
        return Duration.ofMillis(Math.round(samples * 1000.0 / sampleRate));
    }
}
