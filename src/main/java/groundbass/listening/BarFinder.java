package groundbass.listening;

import groundbass.groove.Band;
import groundbass.groove.DrumHit;
import groundbass.performance.Performance;
import groundbass.score.Fraction;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.TreeMap;

/**
 * Finds when each bar of a line begins in a recording of it, though live playing drifts: of all ways to lay the line's
 * beats over the recording it takes the one under which the most sets in where the line and its band set in, less a price
 * for every beat that is longer or shorter than written (dynamic programming, as Ellis 2007, "Beat tracking by dynamic
 * programming", with the beats known).
 */
public final class BarFinder {
    /** How far a beat may stray from the written tempo. */
    private static final double MOST_DRIFT = 0.12;

    /** The price of a beat that is wrong by a tenth is worth so many mean onsets (set by trial). */
    private static final double PRICE_OF_A_TENTH = 1.5;

    /** Parts of a beat, so that both fours and threes fall on them. */
    private static final int PARTS = 12;

    /** How clearly a note, a chord or a stroke of the drums sets in (by ear, no source). */
    private static final double CLEAR = 1;

    private static final double FAINT = 0.4;
    private static final double MOST = 2;

    private final double[] onsets;
    private final List<Beat> beats;

    /** The price and way that lead to each place of one beat. */
    private record Row(int from, double[] score, int[] before) {
        double at(int step) {
            int index = step - from;
            return index < 0 || index >= score.length ? Double.NEGATIVE_INFINITY : score[index];
        }
    }

    /**
     * A beat as written: when it comes in steps from the first, and what is played in its parts until the next.
     *
     * @param bar the index of the bar that it begins, or -1
     */
    private record Beat(double at, double length, double[] played, int bar) {}

    private BarFinder(Hearing hearing, Performance performance, Band band) {
        this.onsets = smoothed(hearing.onsets());
        this.beats = beats(performance, band);
    }

    /**
     * When each bar of the performance begins in the recording, in seconds, and when the last ends. Empty where the
     * recording is too short to hold it.
     */
    public static List<Double> find(Hearing hearing, Performance performance, Band band) {
        return new BarFinder(hearing, performance, band).find();
    }

    /** Every onset is a hill, so that a near miss counts too. */
    private static double[] smoothed(List<Float> onsets) {
        var smoothed = new double[onsets.size()];
        for (int i = 0; i < smoothed.length; i++) {
            double sum = 0;
            for (int near = -2; near <= 2; near++) {
                int at = i + near;
                sum += at < 0 || at >= smoothed.length ? 0 : onsets.get(at) * (3 - Math.abs(near)) / 9.0;
            }
            smoothed[i] = Math.sqrt(sum);
        }
        return levelled(smoothed);
    }

    /** Around zero, with a spread of one: what is missing counts against a place as what is there counts for it. */
    private static double[] levelled(double[] values) {
        double mean = Arrays.stream(values).average().orElse(0);
        double spread = Math.sqrt(Arrays.stream(values)
                .map(value -> (value - mean) * (value - mean))
                .average()
                .orElse(0));
        return Arrays.stream(values)
                .map(value -> spread > 0 ? (value - mean) / spread : 0)
                .toArray();
    }

    private static List<Beat> beats(Performance performance, Band band) {
        var moments = new TreeMap<Fraction, Integer>();
        for (int i = 0; i < performance.bars().size(); i++) {
            var bar = performance.bars().get(i);
            moments.put(bar.start(), i);
            for (var beat : bar.inForce().meter().beatStarts()) {
                if (beat.isAfter(bar.bar().from()) && beat.isBefore(bar.bar().to())) {
                    moments.put(bar.moment(beat), -1);
                }
            }
        }
        moments.put(performance.end(), performance.bars().size());
        var sounding = sounding(performance, band);
        double origin = performance.seconds(performance.bars().get(0).start());
        var beats = new ArrayList<Beat>();
        for (var moment : moments.entrySet()) {
            var next = moments.higherKey(moment.getKey());
            double at = performance.seconds(moment.getKey());
            double length = next == null ? 0 : performance.seconds(next) - at;
            beats.add(new Beat(steps(at - origin), steps(length), played(sounding, at, length), moment.getValue()));
        }
        return beats;
    }

    private static double steps(double seconds) {
        return seconds * Hearing.STEPS_A_SECOND;
    }

    /** How much sets in at each moment of the performance. */
    private static TreeMap<Double, Double> sounding(Performance performance, Band band) {
        var sounding = new TreeMap<Double, Double>();
        performance.notes().forEach(note -> sounding.merge(note.when().start(), CLEAR, Double::sum));
        band.chords().forEach(chord -> sounding.merge(chord.when().start(), FAINT, Double::sum));
        band.drums().forEach(hit -> sounding.merge(hit.seconds(), clarity(hit), Double::sum));
        return sounding;
    }

    private static double clarity(DrumHit hit) {
        return switch (hit.piece()) {
            case KICK, SNARE, CRASH, CLAP, RIM, HIGHTOM, MIDTOM, LOWTOM, COWBELL, OPEN -> CLEAR;
            case HAT, PEDAL, RIDE, BELL, SHAKER, TAMBOURINE -> FAINT;
        };
    }

    private static double[] played(TreeMap<Double, Double> sounding, double at, double length) {
        var played = new double[PARTS];
        double half = length / PARTS / 2;
        for (int part = 0; part < PARTS && length > 0; part++) {
            double middle = at + length * part / PARTS;
            double sum = sounding.subMap(middle - half, middle + half).values().stream()
                    .mapToDouble(Double::doubleValue)
                    .sum();
            played[part] = Math.min(MOST, sum);
        }
        double mean = Arrays.stream(played).average().orElse(0);
        return Arrays.stream(played).map(each -> each - mean / 2).toArray();
    }

    private List<Double> find() {
        int spare = (int) (onsets.length - beats.get(beats.size() - 1).at() * (1 - MOST_DRIFT / 2));
        if (spare <= 0) {
            return List.of();
        }
        var rows = new ArrayList<Row>();
        rows.add(new Row(0, new double[spare], new int[spare]));
        for (int i = 1; i < beats.size(); i++) {
            rows.add(next(rows.get(i - 1), beats.get(i - 1)));
        }
        return bars(rows);
    }

    private Row next(Row row, Beat beat) {
        int shortest = Math.max(1, (int) Math.round(beat.length() * (1 - MOST_DRIFT)));
        int longest = Math.max(shortest, (int) Math.round(beat.length() * (1 + MOST_DRIFT)));
        int from = row.from() + shortest;
        int to = Math.min(onsets.length, row.from() + row.score().length + longest);
        var score = new double[Math.max(0, to - from)];
        var before = new int[score.length];
        Arrays.fill(score, Double.NEGATIVE_INFINITY);
        for (int length = shortest; length <= longest; length++) {
            double tenths = StrictMath.log(length / beat.length()) * 10;
            double price = PRICE_OF_A_TENTH * tenths * tenths;
            for (int i = 0; i < score.length; i++) {
                int start = from + i - length;
                double earlier = row.at(start);
                if (earlier > Double.NEGATIVE_INFINITY) {
                    double value = earlier + heard(start, length, beat) - price;
                    if (value > score[i]) {
                        score[i] = value;
                        before[i] = start;
                    }
                }
            }
        }
        return new Row(from, score, before);
    }

    /** What sets in where the beat has something, less what sets in where it has nothing. */
    private double heard(int start, int length, Beat beat) {
        double heard = 0;
        for (int part = 0; part < PARTS; part++) {
            heard += beat.played()[part] * onsets[start + length * part / PARTS];
        }
        return heard;
    }

    private List<Double> bars(List<Row> rows) {
        var last = rows.get(rows.size() - 1);
        int best = 0;
        for (int i = 1; i < last.score().length; i++) {
            best = last.score()[i] > last.score()[best] ? i : best;
        }
        if (last.score().length == 0 || last.score()[best] == Double.NEGATIVE_INFINITY) {
            return List.of();
        }
        var found = new ArrayList<Double>();
        int step = last.from() + best;
        for (int i = rows.size() - 1; i >= 0; i--) {
            if (beats.get(i).bar() >= 0) {
                found.add(0, seconds(step));
            }
            step = i > 0 ? rows.get(i).before()[step - rows.get(i).from()] : step;
        }
        return List.copyOf(found);
    }

    private double seconds(int step) {
        return (double) step / Hearing.STEPS_A_SECOND;
    }
}
