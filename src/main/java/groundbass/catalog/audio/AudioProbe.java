package groundbass.catalog.audio;

import static groundbass.catalog.audio.AudioFinding.refused;

import java.io.IOException;
import java.nio.file.Path;

/** Tells what a file is by its content; its name is never asked. Reads once through it, in bounded memory. */
public final class AudioProbe {
    private AudioProbe() {}

    /** Whatever the bytes are, the answer is a finding. @throws IOException only where the disk fails */
    public static AudioFinding probe(Path path) throws IOException {
        try (var file = new ByteFile(path)) {
            if (file.length() == 0) {
                return refused("empty");
            }
            if (WavFile.isWav(file)) {
                return WavFile.read(file);
            }
            return Mp3File.looksLikeMp3(file) ? Mp3File.read(file) : refused("unknown");
        }
    }
}
