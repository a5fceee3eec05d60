package groundbass.audio;

import static groundbass.audio.AudioFinding.refused;

import java.io.IOException;
import java.nio.channels.SeekableByteChannel;
import java.time.Duration;
import java.util.Optional;

/** Tells what a file is by its content; its name is never asked. Reads once through it, in bounded memory. */
public final class AudioProbe {
    /** Everything that is taken is decoded later: so much of it, at most. */
    private static final Duration LONGEST = Duration.ofMinutes(30);

    private static final int MOST_CHANNELS = 2;
    private static final int LOWEST_RATE = 8_000;
    private static final int HIGHEST_RATE = 192_000;

    private AudioProbe() {}

    /** Whatever the bytes are, the answer is a finding. @throws IOException only where the channel fails */
    public static AudioFinding probe(SeekableByteChannel channel) throws IOException {
        var file = new ByteFile(channel);
        if (file.length() == 0) {
            return refused("empty");
        }
        var finding = read(file);
        return finding instanceof AudioFinding.Audio audio
                ? problem(audio.facts()).orElse(finding)
                : finding;
    }

    private static AudioFinding read(ByteFile file) throws IOException {
        if (WavFile.isWav(file)) {
            return WavFile.read(file);
        }
        if (FlacFile.isFlac(file)) {
            return FlacFile.read(file);
        }
        return Mp3File.looksLikeMp3(file) ? Mp3File.read(file) : refused("unknown");
    }

    private static Optional<AudioFinding> problem(AudioFacts facts) {
        if (facts.duration().compareTo(LONGEST) > 0) {
            return Optional.of(refused("too-long", facts.duration().toMinutes(), LONGEST.toMinutes()));
        }
        if (facts.channels() > MOST_CHANNELS) {
            return Optional.of(refused("channels", facts.channels(), MOST_CHANNELS));
        }
        boolean usual = facts.sampleRate() >= LOWEST_RATE && facts.sampleRate() <= HIGHEST_RATE;
        return usual ? Optional.empty() : Optional.of(refused("rate", facts.sampleRate(), LOWEST_RATE, HIGHEST_RATE));
    }
}
