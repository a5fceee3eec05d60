package groundbass.bench;

import static groundbass.bench.Timing.print;

import groundbass.groove.Band;
import groundbass.groove.GrooveText;
import groundbass.linetext.LineText;
import groundbass.midi.MidiFile;
import groundbass.midi.Opening;
import groundbass.performance.Performance;
import groundbass.performance.Playing;
import groundbass.score.Line;
import groundbass.signal.Sound;
import groundbass.sound.mix.Balance;
import groundbass.sound.mix.BarSounds;
import groundbass.sound.mix.Mastering;
import groundbass.sound.mix.Mix;
import groundbass.sound.mix.Stem;
import java.io.IOException;
import java.lang.management.ManagementFactory;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.EnumSet;
import java.util.Optional;
import java.util.regex.Pattern;

/**
 * How many times faster than it sounds a mix of four stems is made, on one core, warm: the demo's slap line, eight times
 * through, about three minutes. Beside it a bare plucked-string loop, and a sample-based synthesizer from the
 * distribution's packages with the same MIDI file, where there is one.
 */
final class SoundBench {
    private static final Path DEMO = Path.of("seed-data", "harbour-rounds", "01-rope-and-pulley");
    private static final Playing PLAYING = Playing.ONCE.times(8);
    private static final int BLOCK = 4_096;
    private static final int RATE = 44_100;

    private static volatile Object seen;

    private SoundBench() {}

    public static void main(String[] args) throws Exception {
        var performance = Performance.of(line(Files.readString(DEMO.resolve("line.txt"))), PLAYING);
        var groove = GrooveText.read(Files.readString(DEMO.resolve("groove.txt")));
        var band = Band.of(performance, groove.groove().orElseThrow());
        double seconds = performance.seconds();
        double stems = processor(() -> unmixed(performance, band));
        double mix = processor(() -> rendered(performance, band, EnumSet.allOf(Stem.class)));
        double bass = processor(() -> rendered(performance, band, EnumSet.of(Stem.BASS)));
        double drums = processor(() -> rendered(performance, band, EnumSet.of(Stem.DRUMS)));
        double chords = processor(() -> rendered(performance, band, EnumSet.of(Stem.CHORDS)));
        double loop = processor(() -> bareLoop((int) (seconds * RATE)));
        var once = Performance.of(performance.line());
        double mastering = processor(() -> mastered(once, band));
        print("%.0f s of sound, times real time in processor time of one core", seconds);
        print("  four stems           %7.0f   aim 300", seconds / stems);
        print("  mixed and held down  %7.0f", seconds / mix);
        print("  bass                 %7.0f", seconds / bass);
        print("  drums                %7.0f", seconds / drums);
        print("  chords               %7.0f", seconds / chords);
        print("  a bare string loop   %7.0f", seconds / loop);
        print("  loudness, once       %7.3f s for a line of %.0f s", mastering, seconds / PLAYING.rounds());
        var synthesizer = Synthesizer.named(args);
        if (synthesizer.isEmpty()) {
            print("  no synthesizer named beside it");
            return;
        }
        double plain = synthesizer.get().seconds(MidiFile.of(performance, band, Opening.COUNT_IN), false);
        double full = synthesizer.get().seconds(MidiFile.of(performance, band, Opening.COUNT_IN), true);
        print("  a synthesizer        %7.0f   with effects %.0f", seconds / plain, seconds / full);
        print("  ours to it           %7.2f   with its effects %.2f", plain / mix, full / mix);
        memory();
    }

    /** The median of the processor time of this thread, warm: other work on the machine does not count. */
    private static double processor(Timing.Work work) throws Exception {
        var threads = ManagementFactory.getThreadMXBean();
        var seconds = new double[7];
        for (int i = -3; i < seconds.length; i++) {
            long start = threads.getCurrentThreadCpuTime();
            seen = work.run();
            if (i >= 0) {
                seconds[i] = (threads.getCurrentThreadCpuTime() - start) / 1e9;
            }
        }
        return Timing.median(seconds);
    }

    private static void memory() {
        var runtime = Runtime.getRuntime();
        System.gc();
        print("  heap after all       %7d MiB", (runtime.totalMemory() - runtime.freeMemory()) >> 20);
    }

    private static Line line(String text) {
        return LineText.read("bench.line", text).line();
    }

    private static Object rendered(Performance performance, Band band, EnumSet<Stem> stems) {
        var mix = new Mix(stems, true);
        Sound sound = Mastering.track(performance, BarSounds.of(performance, band), mix, Balance.EVEN);
        var block = new float[sound.channels()][BLOCK];
        float sum = 0;
        for (int count = sound.read(block); count > 0; count = sound.read(block)) {
            sum += block[0][0];
        }
        return sum;
    }

    /** Every bar of every stem; room, bus of the mix and limiter come on top of it. */
    private static Object unmixed(Performance performance, Band band) {
        var sounds = BarSounds.of(performance, band);
        float sum = 0;
        for (var stem : Stem.values()) {
            for (int bar = 0; bar < performance.bars().size(); bar++) {
                sum += sounds.bar(stem, bar).samples()[0];
            }
        }
        return sum;
    }

    private static Object mastered(Performance once, Band band) {
        var sounds = BarSounds.of(once, Band.of(once, band.groove()));
        return Mastering.mastered(once, sounds, Mix.FULL, Mastering.balance(once, sounds));
    }

    /** Karplus and Strong 1983: a delay, the mean of two samples; nothing else. */
    private static Object bareLoop(int samples) {
        var line = new float[535];
        for (int i = 0; i < line.length; i++) {
            line[i] = i % 2 - 0.5f;
        }
        int at = 0;
        float sum = 0;
        for (int i = 0; i < samples; i++) {
            int next = at + 1 == line.length ? 0 : at + 1;
            line[at] = 0.5f * (line[at] + line[next]);
            sum += line[at];
            at = next;
        }
        return sum;
    }

    /** A synthesizer that plays a file of samples; its start and the loading of the samples are timed and taken away. */
    private record Synthesizer(Path program, Path samples) {
        /** As the shell tells the times of its children: user and system. */
        private static final Pattern TIME = Pattern.compile("(\\d+)m([\\d.]+)s");

        /** The program and its file of samples, as they were named. */
        static Optional<Synthesizer> named(String... args) {
            return args.length == 2
                    ? Optional.of(new Synthesizer(Path.of(args[0]), Path.of(args[1])))
                    : Optional.empty();
        }

        /** Processor time. */
        double seconds(byte[] midi, boolean effects) throws Exception {
            return least(midi, effects) - least(silence(), effects);
        }

        private double least(byte[] midi, boolean effects) throws Exception {
            double least = Double.MAX_VALUE;
            for (int i = 0; i < 3; i++) {
                least = Math.min(least, once(midi, effects));
            }
            return least;
        }

        private double once(byte[] midi, boolean effects) throws IOException, InterruptedException {
            var folder = Files.createTempDirectory("bench");
            var file = folder.resolve("in.mid");
            var out = folder.resolve("out.wav");
            Files.write(file, midi);
            String on = effects ? "1" : "0";
            String command = String.join(
                    " ",
                    "" + program,
                    "-ni -r",
                    "" + RATE,
                    "-R",
                    on,
                    "-C",
                    on,
                    "-F",
                    "" + out,
                    "" + samples,
                    "" + file);
            var process = new ProcessBuilder("sh", "-c", command + " > /dev/null 2>&1; times").start();
            var times = new String(process.getInputStream().readAllBytes(), StandardCharsets.UTF_8).strip();
            process.waitFor();
            Files.deleteIfExists(out);
            Files.delete(file);
            Files.delete(folder);
            return TIME.matcher(times.substring(times.lastIndexOf('\n') + 1))
                    .results()
                    .mapToDouble(time -> Integer.parseInt(time.group(1)) * 60 + Double.parseDouble(time.group(2)))
                    .sum();
        }

        /** A file of one empty track. */
        private static byte[] silence() {
            return new byte[] {
                'M',
                'T',
                'h',
                'd',
                0,
                0,
                0,
                6,
                0,
                0,
                0,
                1,
                1,
                (byte) 0xE0,
                'M',
                'T',
                'r',
                'k',
                0,
                0,
                0,
                4,
                0,
                (byte) 0xFF,
                0x2F,
                0
            };
        }
    }
}
