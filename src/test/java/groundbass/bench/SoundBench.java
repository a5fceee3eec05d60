package groundbass.bench;

import static groundbass.bench.Timing.print;

import groundbass.groove.Band;
import groundbass.groove.GrooveText;
import groundbass.linetext.LineText;
import groundbass.midi.MidiFile;
import groundbass.performance.Performance;
import groundbass.performance.Playing;
import groundbass.score.Line;
import groundbass.sound.BackingTrack;
import groundbass.sound.Mix;
import groundbass.sound.Sound;
import groundbass.sound.Stem;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.EnumSet;
import java.util.Optional;

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

    private SoundBench() {}

    public static void main(String[] args) throws Exception {
        var performance = Performance.of(line(Files.readString(DEMO.resolve("line.txt"))), PLAYING);
        var groove = GrooveText.read(Files.readString(DEMO.resolve("groove.txt")));
        var band = Band.of(performance, groove.groove().orElseThrow());
        double seconds = performance.seconds();
        var ms = Timing.medians(
                1,
                () -> rendered(performance, band, EnumSet.allOf(Stem.class)),
                () -> rendered(performance, band, EnumSet.of(Stem.BASS)),
                () -> rendered(performance, band, EnumSet.of(Stem.DRUMS)),
                () -> rendered(performance, band, EnumSet.of(Stem.CHORDS)),
                () -> bareLoop((int) (seconds * RATE)));
        print("%.0f s of sound, times real time on one core", seconds);
        print("  four stems mixed     %7.0f   aim 150, then 300", seconds / ms[0] * 1000);
        print("  bass                 %7.0f", seconds / ms[1] * 1000);
        print("  drums                %7.0f", seconds / ms[2] * 1000);
        print("  chords               %7.0f", seconds / ms[3] * 1000);
        print("  a bare string loop   %7.0f", seconds / ms[4] * 1000);
        var synthesizer = Synthesizer.find();
        if (synthesizer.isEmpty()) {
            print("  no synthesizer found beside it");
            return;
        }
        double plain = synthesizer.get().seconds(MidiFile.of(performance, band), false);
        double full = synthesizer.get().seconds(MidiFile.of(performance, band), true);
        print("  fluidsynth           %7.0f   with effects %.0f", seconds / plain, seconds / full);
        print("  ours to it           %7.2f   with its effects %.2f", plain * 1000 / ms[0], full * 1000 / ms[0]);
        memory();
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
        Sound sound = BackingTrack.of(performance, band, new Mix(stems, true));
        var block = new float[sound.channels()][BLOCK];
        float sum = 0;
        for (int count = sound.read(block); count > 0; count = sound.read(block)) {
            sum += block[0][0];
        }
        return sum;
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
        static Optional<Synthesizer> find() {
            var program = Path.of("/usr/bin/fluidsynth");
            var samples = Path.of("/usr/share/sounds/sf2/default-GM.sf2");
            boolean present = Files.isExecutable(program) && Files.exists(samples);
            return present ? Optional.of(new Synthesizer(program, samples)) : Optional.empty();
        }

        double seconds(byte[] midi, boolean effects) throws Exception {
            double nothing = processor(new byte[0], effects);
            return processor(midi, effects) - nothing;
        }

        /** Processor time, the smallest of three runs. */
        private double processor(byte[] midi, boolean effects) throws Exception {
            double least = Double.MAX_VALUE;
            for (int i = 0; i < 3; i++) {
                least = Math.min(least, once(midi, effects));
            }
            return least;
        }

        private double once(byte[] midi, boolean effects) throws IOException, InterruptedException {
            var folder = Files.createTempDirectory("bench");
            var file = folder.resolve("in.mid");
            Files.write(file, midi.length > 0 ? midi : silence());
            String on = effects ? "1" : "0";
            long start = System.nanoTime();
            var process = new ProcessBuilder(
                            program.toString(),
                            "-ni",
                            "-r",
                            "" + RATE,
                            "-R",
                            on,
                            "-C",
                            on,
                            "-F",
                            folder.resolve("out.wav").toString(),
                            samples.toString(),
                            file.toString())
                    .redirectErrorStream(true)
                    .redirectOutput(ProcessBuilder.Redirect.DISCARD)
                    .start();
            process.waitFor();
            double seconds = (System.nanoTime() - start) / 1e9;
            Files.deleteIfExists(folder.resolve("out.wav"));
            Files.delete(file);
            Files.delete(folder);
            return seconds;
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
