package groundbass.fuzz;

import static groundbass.audio.Flac.mono;

import groundbass.audio.AudioBytes;
import groundbass.audio.AudioFinding;
import groundbass.audio.AudioProbe;
import groundbass.audio.MonoPcm;
import groundbass.audio.Recording;
import groundbass.listening.Hearing;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import java.util.Random;

/** Recordings are judged; those that are taken are listened to. A decoder may refuse, but not fall. */
final class AudioTarget implements Target {
    private static final int RATE = 8_000;
    private final Path file;

    AudioTarget() {
        try {
            file = Files.createTempFile("fuzz", ".audio");
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    @Override
    public List<byte[]> examples() {
        var samples = new float[RATE];
        for (int i = 0; i < samples.length; i++) {
            samples[i] = (float) Math.sin(i / 7.0) / 2;
        }
        return List.of(
                mono(MonoPcm.of(samples, 1)),
                AudioBytes.wav(1, 1, RATE, 16, 4_000),
                AudioBytes.wav(3, 2, RATE, 32, 8_000),
                AudioBytes.encodedMp3(44_100, 2, 128, 1));
    }

    @Override
    public List<String> words() {
        return List.of(
                "fLaC",
                "RIFF",
                "WAVE",
                "fmt ",
                "data",
                "ID3",
                "Xing",
                "Info",
                "TAG",
                "\u0004\u0000\u0000\u0010",
                "\u0000\u0000\u0000\u0000");
    }

    @Override
    public void take(byte[] input, Random random) throws Throwable {
        Files.write(file, input);
        AudioFinding finding;
        try (var channel = Files.newByteChannel(file)) {
            finding = AudioProbe.probe(channel);
        }
        if (!(finding instanceof AudioFinding.Audio audio)) {
            return;
        }
        try (var recording = Recording.open(Files.newByteChannel(file), audio.facts())) {
            Hearing.of(recording);
        } catch (IOException | RuntimeException broken) {
            return; // told at the desk: the recording is broken
        }
    }

    @Override
    public void close() {
        try {
            Files.deleteIfExists(file);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
