package groundbass.bench;

import static groundbass.bench.Timing.print;

import groundbass.audio.Flac;
import groundbass.audio.Mp3;
import groundbass.groove.Band;
import groundbass.groove.GrooveLibrary;
import groundbass.linetext.LineText;
import groundbass.listening.BarFinder;
import groundbass.listening.Hearing;
import groundbass.listening.Loudness;
import groundbass.performance.Performance;
import groundbass.performance.Playing;
import groundbass.release.play.Tape;
import groundbass.signal.Sound;
import groundbass.sound.mix.Mix;
import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;

/**
 * How many times faster than it sounds audio is rendered onto a tape, mixed from it, encoded, measured and listened to,
 * on one core, warm: a demo line twice through.
 */
final class AudioBench {
    private static final Path DEMO = Path.of("seed-data", "harbour-rounds", "02-night-ferry", "line.txt");
    private static final int ROUNDS = 2;

    private AudioBench() {}

    /** Something that may fail on the disk. */
    private interface Work {
        Object run() throws IOException;
    }

    public static void main(String[] args) throws Exception {
        var line = LineText.read(Files.readString(DEMO)).line();
        var groove = GrooveLibrary.suited(line);
        var twice = Performance.of(line, Playing.ONCE.times(ROUNDS));
        double once = Performance.of(line).seconds();
        try (var tape = Tape.record(line, groove, 100)) {
            double seconds = mix(tape).frames() / 44_100.0;
            var hearing = Hearing.of(mix(tape));
            var ms = Timing.medians(
                    1,
                    () -> quietly(() -> {
                        Tape.record(line, groove, 100).close();
                        return line;
                    }),
                    () -> read(mix(tape)),
                    () -> quietly(() -> {
                        Mp3.encode(mix(tape), OutputStream.nullOutputStream(), Mp3.KILOBITS_A_SECOND);
                        return line;
                    }),
                    () -> quietly(() -> {
                        Flac.frames(mix(tape), OutputStream.nullOutputStream());
                        return line;
                    }),
                    () -> Loudness.of(mix(tape)),
                    () -> Hearing.of(mix(tape)),
                    () -> BarFinder.find(hearing, twice, Band.of(twice, groove)));
            print("%.0f s of sound, times real time on one core", seconds);
            print("  four stems onto a tape    %7.0f", once / ms[0] * 1000);
            print("  mixed from the tape       %7.0f", seconds / ms[1] * 1000);
            print("  MP3, 128 kbit/s           %7.0f", seconds / ms[2] * 1000);
            print("  FLAC, stereo              %7.0f", seconds / ms[3] * 1000);
            print("  loudness and true peak    %7.0f", seconds / ms[4] * 1000);
            print("  listening to a recording  %7.0f", seconds / ms[5] * 1000);
            print("  finding its bars          %7.0f", seconds / ms[6] * 1000);
        }
    }

    private static Sound mix(Tape tape) {
        return tape.mix(Mix.FULL, ROUNDS);
    }

    private static Object quietly(Work work) {
        try {
            return work.run();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static Object read(Sound sound) {
        var block = new float[2][4_096];
        float sum = 0;
        while (sound.read(block) > 0) {
            sum += block[0][0];
        }
        return sum;
    }
}
