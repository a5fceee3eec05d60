package groundbass.release.play;

import groundbass.groove.Band;
import groundbass.groove.Groove;
import groundbass.identity.Sha256;
import groundbass.performance.Performance;
import groundbass.performance.Playing;
import groundbass.performance.TimedBar;
import groundbass.score.Line;
import groundbass.signal.Sound;
import groundbass.sound.mix.Balance;
import groundbass.sound.mix.BarSound;
import groundbass.sound.mix.BarSounds;
import groundbass.sound.mix.Mastering;
import groundbass.sound.mix.Mix;
import groundbass.sound.mix.PreRoll;
import groundbass.sound.mix.Stem;
import groundbass.sound.mix.StemBars;
import groundbass.store.temporary.TemporaryFiles;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.channels.FileChannel;
import java.nio.file.StandardOpenOption;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;

/**
 * One line at one tempo, rendered once: every bar of every stem in a scratch file, equal bars once. The page's stems and
 * all mixes are made from it, so that they differ in their levels alone. Thread-safe once recorded.
 */
public final class Tape implements StemBars, AutoCloseable {
    private final Performance performance;
    private final Band band;
    private final FileChannel file;
    private final Map<Sha256, Place> known = new HashMap<>();
    private final Map<Stem, List<Place>> bars = new EnumMap<>(Stem.class);
    private final List<Integer> leads = new ArrayList<>();
    private Place countIn = Place.NOWHERE;
    private final Map<Mixed, Balance> levels = new ConcurrentHashMap<>();
    private Balance balance = Balance.EVEN;
    private long size;

    /** @param wide whether half of it is its side */
    private record Place(long offset, int bytes, boolean wide) {
        static final Place NOWHERE = new Place(0, 0, false);
    }

    private record Mixed(Mix mix, int rounds) {}

    private record Key(int bar, int pass) {
        static Key of(TimedBar bar) {
            return new Key(bar.number(), bar.pass());
        }
    }

    private Tape(Performance performance, Band band) throws IOException {
        this.performance = performance;
        this.band = band;
        var path = TemporaryFiles.file();
        this.file = FileChannel.open(
                path, StandardOpenOption.READ, StandardOpenOption.WRITE, StandardOpenOption.DELETE_ON_CLOSE);
    }

    public static Tape record(Line line, Groove groove, int percent) throws IOException {
        var performance = Performance.of(line, Playing.at(percent));
        var tape = new Tape(performance, Band.of(performance, groove));
        try {
            tape.record();
            return tape;
        } catch (IOException | RuntimeException e) {
            tape.close();
            throw e;
        }
    }

    private void record() throws IOException {
        var sounds = BarSounds.of(performance, band);
        countIn = keep(sounds.countIn());
        for (int bar = 0; bar < performance.bars().size(); bar++) {
            leads.add(sounds.lead(bar));
        }
        for (var stem : Stem.values()) {
            var places = new ArrayList<Place>();
            for (int bar = 0; bar < performance.bars().size(); bar++) {
                places.add(keep(sounds.bar(stem, bar)));
            }
            bars.put(stem, List.copyOf(places));
        }
        balance = Mastering.balance(performance, this);
    }

    private Place keep(BarSound sound) throws IOException {
        if (sound.isNothing()) {
            return Place.NOWHERE;
        }
        byte[] bytes = bytes(sound);
        var digest = Sha256.of(bytes);
        if (!known.containsKey(digest)) {
            known.put(digest, new Place(size, bytes.length, sound.side().length > 0));
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

    private static byte[] bytes(BarSound sound) {
        var bytes = ByteBuffer.allocate((sound.samples().length + sound.side().length) * Float.BYTES);
        bytes.asFloatBuffer().put(sound.samples()).put(sound.side());
        return bytes.array();
    }

    private BarSound read(Place place) {
        var buffer = ByteBuffer.allocate(place.bytes());
        try {
            while (buffer.hasRemaining() && file.read(buffer, place.offset() + buffer.position()) >= 0) {
                // a read may bring less than was asked for
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        int count = place.bytes() / Float.BYTES;
        var samples = new float[place.wide() ? count / 2 : count];
        var side = new float[count - samples.length];
        buffer.flip().asFloatBuffer().get(samples).get(side);
        return new BarSound(samples, side);
    }

    @Override
    public BarSound bar(Stem stem, int bar) {
        return read(bars.get(stem).get(bar));
    }

    @Override
    public BarSound countIn() {
        return read(countIn);
    }

    @Override
    public int lead(int bar) {
        return leads.get(bar);
    }

    /** For stems that the page lays together: {@link Mastering#loose}. */
    Balance loose() {
        return Mastering.loose(performance, this, balance);
    }

    /**
     * A mix as it is to be heard, the line played several times over; before a count-in, which comes once, there is a
     * {@link PreRoll}.
     */
    public Sound mix(Mix mix, int rounds) {
        var playing = Playing.at(performance.playing().percent()).times(rounds);
        var all = Performance.of(performance.line(), playing);
        var sounds = inOrder(order(all));
        var mastered =
                levels.computeIfAbsent(new Mixed(mix, rounds), any -> Mastering.mastered(all, sounds, mix, balance));
        var track = Mastering.track(all, sounds, mix, mastered);
        return mix.countIn() ? PreRoll.before(track) : track;
    }

    /** Which bar of the tape each bar of this performance is. */
    private List<Integer> order(Performance all) {
        var first = new HashMap<Key, Integer>();
        for (int bar = 0; bar < bars(); bar++) {
            first.put(Key.of(performance.bars().get(bar)), bar);
        }
        return all.bars().stream().map(bar -> first.get(Key.of(bar))).toList();
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
