package groundbass.release.play;

import groundbass.audio.MonoPcm;
import groundbass.groove.Band;
import groundbass.groove.Groove;
import groundbass.identity.Sha256;
import groundbass.performance.Performance;
import groundbass.performance.Playing;
import groundbass.performance.TimedBar;
import groundbass.score.Line;
import groundbass.sound.mix.BackingTrack;
import groundbass.sound.mix.BarSound;
import groundbass.sound.mix.BarSounds;
import groundbass.sound.mix.Mix;
import groundbass.sound.mix.Stem;
import groundbass.sound.mix.StemBars;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.Files;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * One line at one tempo, rendered once: every bar of every stem as 16-bit samples in a scratch file, equal bars once. The
 * page's stems and all mixes are made from it, so that they are the same to the sample. Thread-safe once recorded.
 */
public final class Tape implements StemBars, AutoCloseable {
    private final Performance performance;
    private final Band band;
    private final FileChannel file;
    private final Map<Sha256, Place> known = new HashMap<>();
    private final Map<Stem, List<Place>> bars = new EnumMap<>(Stem.class);
    private final List<Integer> leads = new ArrayList<>();
    private Place countIn = Place.NOWHERE;
    private long size;

    private record Place(long offset, int bytes) {
        static final Place NOWHERE = new Place(0, 0);
    }

    private record Key(int bar, int pass) {
        static Key of(TimedBar bar) {
            return new Key(bar.number(), bar.pass());
        }
    }

    private Tape(Performance performance, Band band) throws IOException {
        this.performance = performance;
        this.band = band;
        var path = Files.createTempFile("groundbass", ".tape");
        this.file = FileChannel.open(
                path, StandardOpenOption.READ, StandardOpenOption.WRITE, StandardOpenOption.DELETE_ON_CLOSE);
    }

    /** @param gain what every stem is multiplied by */
    public static Tape record(Line line, Groove groove, int percent, double gain) throws IOException {
        var performance = Performance.of(line, Playing.at(percent));
        var tape = new Tape(performance, Band.of(performance, groove));
        try {
            tape.record(gain);
            return tape;
        } catch (IOException | RuntimeException e) {
            tape.close();
            throw e;
        }
    }

    private void record(double gain) throws IOException {
        var sounds = BarSounds.of(performance, band);
        countIn = keep(sounds.countIn(), gain);
        for (var stem : Stem.values()) {
            var places = new ArrayList<Place>();
            for (int bar = 0; bar < performance.bars().size(); bar++) {
                places.add(keep(sounds.bar(stem, bar), gain));
            }
            bars.put(stem, List.copyOf(places));
        }
        for (int bar = 0; bar < performance.bars().size(); bar++) {
            leads.add(sounds.lead(bar));
        }
    }

    private Place keep(BarSound sound, double gain) throws IOException {
        if (sound.isNothing()) {
            return Place.NOWHERE;
        }
        byte[] bytes = MonoPcm.of(sound.samples(), gain).bytes();
        var digest = Sha256.of(bytes);
        if (!known.containsKey(digest)) {
            known.put(digest, new Place(size, bytes.length));
            var buffer = ByteBuffer.wrap(bytes);
            while (buffer.hasRemaining()) {
                size += file.write(buffer, size);
            }
        }
        return known.get(digest);
    }

    Performance performance() {
        return performance;
    }

    Band band() {
        return band;
    }

    int bars() {
        return performance.bars().size();
    }

    MonoPcm pcm(Stem stem, int bar) {
        return read(bars.get(stem).get(bar));
    }

    MonoPcm countInPcm() {
        return read(countIn);
    }

    private MonoPcm read(Place place) {
        var buffer = ByteBuffer.allocate(place.bytes());
        try {
            while (buffer.hasRemaining() && file.read(buffer, place.offset() + buffer.position()) >= 0) {
                // a read may bring less than was asked for
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return MonoPcm.of(buffer.array());
    }

    @Override
    public BarSound bar(Stem stem, int bar) {
        return new BarSound(pcm(stem, bar).toFloats());
    }

    @Override
    public BarSound countIn() {
        return new BarSound(countInPcm().toFloats());
    }

    @Override
    public int lead(int bar) {
        return leads.get(bar);
    }

    /** The line played several times over, the count-in once. */
    public BackingTrack mix(Mix mix, int rounds) {
        var playing = Playing.at(performance.playing().percent()).times(rounds);
        var all = Performance.of(performance.line(), playing);
        var first = new HashMap<Key, Integer>();
        for (int bar = 0; bar < bars(); bar++) {
            first.put(Key.of(performance.bars().get(bar)), bar);
        }
        var order = all.bars().stream().map(bar -> first.get(Key.of(bar))).toList();
        return BackingTrack.of(all, inOrder(order), mix);
    }

    private StemBars inOrder(List<Integer> order) {
        return new StemBars() {
            @Override
            public BarSound bar(Stem stem, int bar) {
                return Tape.this.bar(stem, order.get(bar));
            }

            @Override
            public BarSound countIn() {
                return Tape.this.countIn();
            }

            @Override
            public int lead(int bar) {
                return Tape.this.lead(order.get(bar));
            }
        };
    }

    /** The scratch file goes. */
    @Override
    public void close() throws IOException {
        file.close();
    }
}
