package groundbass.walkthrough;

import groundbass.score.Arrival;
import groundbass.score.Fraction;
import groundbass.score.InForce;
import groundbass.score.Line;
import groundbass.score.Note;
import groundbass.score.Place.Fretted;
import groundbass.score.Position;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.NavigableMap;
import java.util.Optional;
import java.util.TreeMap;

/**
 * Where the index finger lies from note to note so that the hand moves seldom, one finger a fret, fingers that are
 * written kept: the cheapest way by dynamic programming. A teacher lets the hand move at the beginning of a bar or a beat
 * rather than within, and index at the lowest fret of what comes (common practice, no source).
 */
final class HandPath {
    /** At a moment that no hand covers. */
    static final int NOWHERE = 0;

    private static final int HIGHEST = Fretted.MOST_FRETS;
    private static final int FINGERS = 4;
    private static final double MOVE = 1;
    private static final double PER_FRET = 0.02;
    private static final double WITHIN_BAR = 0.3;
    private static final double WITHIN_BEAT = 0.4;
    private static final double UNUSED_INDEX = 0.05;
    private static final double STRAINED = 2;

    /** A shift within a beat goes so many frets; each more costs another shift. */
    private static final int NEAR = 3;

    private static final double FAR = 1.5;

    /** A shift under a slur, or a slide that does not take the hand along. */
    private static final double UNNATURAL = 3;

    private final List<InForce> inForce;
    private final Map<Position, Integer> known;
    private final List<Integer> before;
    private final List<Moment> moments = new ArrayList<>();

    /** What is stopped at one time, in a bar of this index; {@code first} of its bar. */
    private record Moment(int bar, Fraction at, List<Note> notes, boolean first) {
        boolean isUnder(int index) {
            return notes.stream().allMatch(note -> {
                int above = fret(note) - index;
                boolean inReach = above >= 0 && above < FINGERS;
                var finger = note.ornaments().finger();
                return inReach && (finger.isEmpty() || (finger.getAsInt() == 1) == (above == 0));
            });
        }

        /** By how many frets fingers that are written are drawn together or apart. */
        int strained(int index) {
            return notes.stream()
                    .filter(note -> note.ornaments().finger().isPresent())
                    .mapToInt(note -> Math.abs(
                            fret(note) - index + 1 - note.ornaments().finger().getAsInt()))
                    .sum();
        }

        int lowest() {
            return notes.stream().mapToInt(HandPath::fret).min().orElseThrow();
        }

        Optional<Arrival.Kind> arrival() {
            return notes.stream()
                    .flatMap(note -> note.arrival().stream())
                    .filter(arrival -> !arrival.isGrace())
                    .map(Arrival::kind)
                    .findFirst();
        }
    }

    private HandPath(Line line, Map<Position, Integer> known) {
        this.inForce = line.inForce();
        this.known = known;
        this.before = BarBefore.all(line);
        for (int i = 0; i < line.bars().size(); i++) {
            var byTime = new TreeMap<Fraction, List<Note>>();
            line.bars().get(i).notes().stream().filter(HandPath::isStopped).forEach(note -> byTime.computeIfAbsent(
                            note.onset(), at -> new ArrayList<>())
                    .add(note));
            for (var entry : byTime.entrySet()) {
                moments.add(new Moment(
                        i, entry.getKey(), entry.getValue(), byTime.firstKey().equals(entry.getKey())));
            }
        }
    }

    /** A harmonic is touched, what is tapped the other hand stops, and an open string leaves the hand where it is. */
    private static boolean isStopped(Note note) {
        return note.ornaments().harmonic().isEmpty() && !HardSpots.isTapped(note) && fret(note) > 0;
    }

    private static int fret(Note note) {
        return note.place() instanceof Fretted place ? place.fret() : 0;
    }

    /**
     * The fret of the index finger by time, bars by their index.
     *
     * @param known where it has to lie
     */
    static NavigableMap<Position, Integer> of(Line line, Map<Position, Integer> known) {
        return new HandPath(line, known).cheapest();
    }

    private NavigableMap<Position, Integer> cheapest() {
        var cost = new double[HIGHEST + 1];
        var ways = new ArrayList<int[]>();
        for (int i = 0; i < moments.size(); i++) {
            var next = new double[HIGHEST + 1];
            var from = new int[HIGHEST + 1];
            Arrays.fill(next, Double.POSITIVE_INFINITY);
            for (int index : possible(i)) {
                for (int before : i == 0 ? List.of(index) : possible(i - 1)) {
                    double all = cost[before] + (i == 0 ? 0 : move(i, before, index)) + lying(i, index);
                    if (all < next[index]) {
                        next[index] = all;
                        from[index] = before;
                    }
                }
            }
            ways.add(from);
            cost = next;
        }
        return back(cost, ways);
    }

    private NavigableMap<Position, Integer> back(double[] cost, List<int[]> ways) {
        var path = new TreeMap<Position, Integer>();
        int index = NOWHERE;
        for (int i = NOWHERE; i < cost.length; i++) {
            index = cost[i] < cost[index] ? i : index;
        }
        for (int i = moments.size() - 1; i >= 0; i--) {
            path.put(new Position(moments.get(i).bar(), moments.get(i).at()), index);
            index = ways.get(i)[index];
        }
        return path;
    }

    private List<Integer> possible(int moment) {
        var here = moments.get(moment);
        var fixed = known.get(new Position(here.bar(), here.at()));
        if (fixed != null) {
            return List.of(fixed);
        }
        var all = new ArrayList<Integer>();
        for (int index = 1; index <= HIGHEST; index++) {
            if (here.isUnder(index)) {
                all.add(index);
            }
        }
        return all.isEmpty() ? List.of(NOWHERE) : all;
    }

    private double lying(int moment, int index) {
        var here = moments.get(moment);
        return index == NOWHERE ? 0 : UNUSED_INDEX * (here.lowest() - index) + STRAINED * here.strained(index);
    }

    private double move(int moment, int before, int index) {
        var here = moments.get(moment);
        if (here.first() && here.bar() > 0 && this.before.get(here.bar()) != here.bar() - 1) {
            return 0; // the hand comes from elsewhere
        }
        var arrival = here.arrival();
        if (arrival.equals(Optional.of(Arrival.Kind.SLIDE))) {
            int slid = here.lowest() - moments.get(moment - 1).lowest();
            return index - before == slid ? 0 : UNNATURAL;
        }
        if (index == before) {
            return 0;
        }
        double cost = MOVE + PER_FRET * Math.abs(index - before) + (arrival.isPresent() ? UNNATURAL : 0);
        return here.first() ? cost : cost + within(here, Math.abs(index - before));
    }

    private double within(Moment moment, int frets) {
        var meter = inForce.get(moment.bar()).meter();
        return meter.beatStart(moment.at()).equals(moment.at())
                ? WITHIN_BAR
                : WITHIN_BEAT + FAR * Math.max(0, frets - NEAR);
    }
}
