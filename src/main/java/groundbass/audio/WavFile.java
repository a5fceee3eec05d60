package groundbass.audio;

import static groundbass.audio.AudioFinding.refused;

import java.io.IOException;
import java.util.Optional;
import java.util.OptionalLong;

/**
 * RIFF/WAVE: "Multimedia Programming Interface and Data Specifications 1.0", IBM and Microsoft, August 1991, chapters 2
 * (RIFF: chunks of a four-character code, a 32-bit little-endian size, data padded to an even length) and 3 (WAVE: the
 * {@code fmt } chunk, then the {@code data} chunk). The tags for float and for the extensible form are of Microsoft's
 * later mmreg.h.
 */
final class WavFile {
    private static final int RIFF_HEADER = 12;
    private static final int CHUNK_HEADER = 8;
    private static final int MOST_CHUNKS = 1000;

    private WavFile() {}

    static boolean isWav(ByteFile file) throws IOException {
        return file.says(0, "RIFF") && file.says(8, "WAVE");
    }

    static AudioFinding read(ByteFile file) throws IOException {
        OptionalLong format = find(file, "fmt ", RIFF_HEADER);
        if (format.isEmpty() || !isWhole(file, format.getAsLong())) {
            return refused("wav.no-format");
        }
        var wave = WavFormat.read(file, format.getAsLong() + CHUNK_HEADER, size(file, format.getAsLong()));
        Optional<AudioFinding> wrong = wave.problem();
        if (wrong.isPresent()) {
            return wrong.get();
        }
        // the format stands before the data (chapter 3), so the search goes on from there
        OptionalLong data = find(file, "data", next(file, format.getAsLong()));
        if (data.isEmpty() || size(file, data.getAsLong()) < wave.blockAlign()) {
            return refused("wav.no-data");
        }
        if (!isWhole(file, data.getAsLong())) {
            return refused("cut-off", data.getAsLong() + CHUNK_HEADER + size(file, data.getAsLong()) - file.length());
        }
        return new AudioFinding.Audio(wave.facts(size(file, data.getAsLong()) / wave.blockAlign()));
    }

    /** Where the samples lie in a file that {@link #read} has found good. */
    record Data(WavFormat format, long from, long to) {}

    static Data data(ByteFile file) throws IOException {
        long format = find(file, "fmt ", RIFF_HEADER).orElseThrow();
        long data = find(file, "data", next(file, format)).orElseThrow();
        long from = data + CHUNK_HEADER;
        return new Data(WavFormat.read(file, format + CHUNK_HEADER, size(file, format)), from, from + size(file, data));
    }

    /** Where the header of the first chunk of this kind begins. */
    private static OptionalLong find(ByteFile file, String kind, long from) throws IOException {
        long at = from;
        for (int i = 0; i < MOST_CHUNKS && file.has(at, CHUNK_HEADER); i++) {
            if (file.says(at, kind)) {
                return OptionalLong.of(at);
            }
            at = next(file, at);
        }
        return OptionalLong.empty();
    }

    private static long size(ByteFile file, long chunk) throws IOException {
        return file.littleEndian32(chunk + 4);
    }

    private static long next(ByteFile file, long chunk) throws IOException {
        long size = size(file, chunk);
        return chunk + CHUNK_HEADER + size + size % 2;
    }

    private static boolean isWhole(ByteFile file, long chunk) throws IOException {
        return file.has(chunk + CHUNK_HEADER, size(file, chunk));
    }
}
