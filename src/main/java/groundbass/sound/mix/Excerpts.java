package groundbass.sound.mix;

import groundbass.groove.Band;
import groundbass.groove.Click;
import groundbass.groove.DrumHit;
import groundbass.performance.Origin;
import groundbass.performance.Performance;
import groundbass.performance.TimedBar;
import groundbass.performance.TimedNote;
import groundbass.score.Fraction;
import groundbass.signal.SampleRate;
import groundbass.sound.drum.DrumPart;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.stream.IntStream;

/** Deals a performance and its band out to the bars in which things begin. */
final class Excerpts {
    private static final SampleRate RATE = SampleRate.CD;

    private final Performance performance;
    private final Map<Key, Integer> byKey = new HashMap<>();
    private final TreeMap<Fraction, Integer> byMoment = new TreeMap<>();
    private final List<ExcerptBuilder> sheaves;

    /** One playing of one bar. */
    private record Key(int number, int pass, int round) {
        static Key of(TimedBar bar) {
            return new Key(bar.number(), bar.pass(), bar.round());
        }

        static Key of(Origin origin) {
            return new Key(origin.written().bar(), origin.pass(), origin.round());
        }
    }

    private Excerpts(Performance performance) {
        this.performance = performance;
        var bars = performance.bars();
        for (int i = 0; i < bars.size(); i++) {
            byKey.put(Key.of(bars.get(i)), i);
            byMoment.put(bars.get(i).start(), i);
        }
        this.sheaves = IntStream.range(0, bars.size())
                .mapToObj(bar -> new ExcerptBuilder())
                .toList();
    }

    /** One for each bar in the order in which they are played. */
    static List<Excerpt> ofBars(Performance performance, Band band) {
        var excerpts = new Excerpts(performance);
        excerpts.notes();
        excerpts.drums(band.drums());
        band.chords().forEach(chord -> excerpts.at(chord.when().at()).chords.add(chord));
        band.clicks().stream()
                .filter(click -> !click.countIn())
                .forEach(click -> excerpts.at(click.at()).clicks.add(click));
        return excerpts.bound();
    }

    /** The clicks before the first whole bar. */
    static Excerpt ofCountIn(Performance performance, Band band) {
        var sheaf = new ExcerptBuilder();
        band.clicks().stream().filter(Click::countIn).forEach(sheaf.clicks::add);
        return sheaf.bound(RATE, performance.line().header().tuning(), 0);
    }

    /** All of it in one. */
    static Excerpt ofWhole(Performance performance, Band band) {
        var sheaf = new ExcerptBuilder();
        sheaf.notes.addAll(performance.notes());
        sheaf.hits.addAll(band.drums());
        sheaf.chords.addAll(band.chords());
        sheaf.clicks.addAll(band.clicks());
        return sheaf.bound(RATE, performance.line().header().tuning(), 0);
    }

    private List<Excerpt> bound() {
        var tuning = performance.line().header().tuning();
        return IntStream.range(0, sheaves.size())
                .mapToObj(i -> sheaves.get(i)
                        .bound(
                                RATE,
                                tuning,
                                performance.seconds(performance.bars().get(i).start())))
                .toList();
    }

    private ExcerptBuilder at(Fraction moment) {
        return sheaves.get(byMoment.floorEntry(moment).getValue());
    }

    /** A note that the one before it on its string runs into goes where that one went. */
    private void notes() {
        var before = new HashMap<Integer, TimedNote>();
        var bars = new HashMap<Integer, Integer>();
        for (var note : performance.notes()) {
            int string = note.string();
            int here = byKey.get(Key.of(note.origin()));
            int bar = runsInto(before.get(string), note) ? bars.get(string) : here;
            before.put(string, note);
            bars.put(string, bar);
            sheaves.get(bar).notes.add(note);
        }
    }

    /** A gap between them, or a new stroke, makes the second a sound of its own. */
    private static boolean runsInto(TimedNote before, TimedNote note) {
        return before != null
                && note.isContinued()
                && !before.when().until().isBefore(note.when().at());
    }

    /** From the last bar to the first, so that each knows what closes its hi-hat. */
    private void drums(List<DrumHit> hits) {
        hits.forEach(hit -> at(hit.at()).hits.add(hit));
        for (int i = sheaves.size() - 2; i >= 0; i--) {
            sheaves.get(i).closes = closes(sheaves.get(i + 1));
        }
    }

    private static double closes(ExcerptBuilder next) {
        return next.hits.stream()
                .filter(hit -> DrumPart.CLOSING.contains(hit.piece()))
                .mapToDouble(DrumHit::seconds)
                .findFirst()
                .orElse(next.closes);
    }
}
