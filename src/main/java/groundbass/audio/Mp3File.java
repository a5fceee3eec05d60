package groundbass.audio;

import static groundbass.audio.AudioFinding.refused;

import java.io.IOException;
import java.util.Optional;

/**
 * A file of MPEG layer III frames, each beginning where the one before ends; before them may stand tags (ID3v2.4.0,
 * section 3.1: "ID3", two bytes of version, flags, a size of four times seven bits), after them other tags.
 */
final class Mp3File {
    private static final int FEWEST_FRAMES = 4; // so many headers in their places are no accident
    private static final int ID3_HEADER = 10;
    private static final int ID3_FOOTER_FLAG = 0x10;
    private static final int MOST_PADDING = 1 << 16;

    private final ByteFile file;
    private Optional<Mp3Frame> first = Optional.empty();
    private long at;
    private long frames;
    private long frameBytes;

    private Mp3File(ByteFile file) {
        this.file = file;
    }

    /** Whether it begins as such a file does; the rest is for {@link #read} to find out. */
    static boolean looksLikeMp3(ByteFile file) throws IOException {
        return file.says(0, "ID3")
                || file.has(0, Mp3Frame.HEADER)
                        && Mp3Frame.read(file.bigEndian32(0)).isPresent();
    }

    static AudioFinding read(ByteFile file) throws IOException {
        var mp3 = new Mp3File(file);
        mp3.skipTags();
        mp3.skipPadding();
        mp3.walkFrames();
        return mp3.finding();
    }

    /** Where the first frame stands, if there is any. */
    static long firstFrame(ByteFile file) throws IOException {
        var mp3 = new Mp3File(file);
        mp3.skipTags();
        mp3.skipPadding();
        return mp3.at;
    }

    private void skipTags() throws IOException {
        while (file.says(at, "ID3") && file.has(at, ID3_HEADER)) {
            boolean footer = (file.u8(at + 5) & ID3_FOOTER_FLAG) != 0;
            at += ID3_HEADER + sevenBitSize(at + 6) + (footer ? ID3_HEADER : 0);
        }
    }

    private int sevenBitSize(long from) throws IOException {
        int size = 0;
        for (int i = 0; i < 4; i++) {
            size = size << 7 | file.u8(from + i) & 0x7F;
        }
        return size;
    }

    /** Some writers leave zeros behind a tag without counting them. */
    private void skipPadding() throws IOException {
        long end = at + MOST_PADDING;
        while (at < end && file.has(at, 1) && file.u8(at) == 0) {
            at++;
        }
    }

    private void walkFrames() throws IOException {
        for (var frame = frameHere(); frame.isPresent(); frame = frameHere()) {
            count(frame.get());
        }
    }

    private void count(Mp3Frame frame) {
        first = first.or(() -> Optional.of(frame));
        frames++;
        frameBytes += frame.length();
        at += frame.length();
    }

    private Optional<Mp3Frame> frameHere() throws IOException {
        if (!file.has(at, Mp3Frame.HEADER)) {
            return Optional.empty();
        }
        return Mp3Frame.read(file.bigEndian32(at))
                .filter(frame -> file.has(at, frame.length()))
                .filter(frame -> first.isEmpty() || first.get().goesWith(frame));
    }

    private AudioFinding finding() throws IOException {
        if (frames < FEWEST_FRAMES) {
            return refused("mp3.no-frames", FEWEST_FRAMES);
        }
        if (!onlyTagsFollow()) {
            return refused("mp3.broken", at);
        }
        var frame = first.orElseThrow();
        long samples = frames * frame.samples();
        int bitRate = (int) (frameBytes * 8 * frame.sampleRate() / samples);
        return new AudioFinding.Audio(new AudioFacts(
                AudioFormat.MP3,
                frame.sampleRate(),
                frame.channels(),
                bitRate,
                AudioFacts.duration(samples, frame.sampleRate())));
    }

    /** Behind the frames: nothing, a last frame that was cut, or a tag by one of the usual beginnings. */
    private boolean onlyTagsFollow() throws IOException {
        if (!file.has(at, 1) || file.says(at, "TAG") || file.says(at, "APETAGEX") || file.says(at, "LYRICSBEGIN")) {
            return true;
        }
        return file.says(at, "ID3") || isCutFrame();
    }

    private boolean isCutFrame() throws IOException {
        return file.has(at, Mp3Frame.HEADER)
                && Mp3Frame.read(file.bigEndian32(at))
                        .filter(frame -> frame.goesWith(first.orElseThrow()))
                        .filter(frame -> !file.has(at, frame.length()))
                        .isPresent();
    }
}
