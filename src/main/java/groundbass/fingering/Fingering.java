package groundbass.fingering;

import groundbass.performance.Performance;
import groundbass.performance.Played;
import groundbass.score.Line;
import groundbass.score.NoteAt;
import groundbass.score.Passage;
import groundbass.score.Place;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;

/**
 * How a written line lies under the hand: fingers and positions for the places that are written, and other places for
 * the same pitches. Every written note counts once, at the speed at which it is first played.
 */
public final class Fingering {

    private final Fretboard neck;
    private final Hand hand;
    private final List<Sounding> soundings;
    private final List<SoundingMoment> written;
    private final Optional<Way> way;
    private final List<Stop> stops;
    private final List<Gripped> gripped;
    private final Map<NoteAt, Stop> byNote = new HashMap<>();

    private Fingering(Performance performance, Fretboard neck, Hand hand) {
        this.neck = neck;
        this.hand = hand;
        this.soundings = Sounding.of(performance);
        this.written = soundings.stream().map(Sounding::written).toList();
        this.way = Search.best(neck, hand, written);
        this.stops = way.map(found -> stops(0, found)).orElse(List.of());
        this.gripped = way.map(this::gripped).orElse(List.of());
        stops.forEach(stop -> byNote.put(stop.note(), stop));
    }

    private List<Gripped> gripped(Way found) {
        return IntStream.range(0, soundings.size())
                .mapToObj(i -> new Gripped(
                        found.grips().get(i),
                        soundings.get(i).notes().stream().map(Played::at).toList(),
                        soundings.get(i).start(),
                        found.costs().get(i)))
                .toList();
    }

    /** For an average hand on a neck of the usual length. */
    public static Fingering of(Line line) {
        return of(Performance.of(line), Fretboard.of(line.header()), Hand.AVERAGE);
    }

    public static Fingering of(Performance performance, Fretboard neck, Hand hand) {
        return new Fingering(performance, neck, hand);
    }

    /** Every written note in the order of playing. */
    public List<Stop> stops() {
        return stops;
    }

    /** What the hand does from moment to moment; empty where the line has no notes. */
    public List<Gripped> grips() {
        return gripped;
    }

    public Optional<Stop> at(NoteAt note) {
        return Optional.ofNullable(byNote.get(note));
    }

    /** What the line costs as it is written; nothing, where there are no notes. */
    public Cost cost() {
        return way.map(Way::cost).orElse(new Cost(Map.of()));
    }

    /**
     * The cheapest other ways of playing what begins in a passage, at most {@code most}, the cheapest first; what comes
     * before and after stays as it is written.
     */
    public List<Alternative> others(Passage passage, int most) {
        var window = window(passage);
        if (window.isEmpty()) {
            return List.of();
        }
        var moments = freed(window.get());
        double asWritten = asWritten(window.get());
        return Search.ways(neck, hand, moments, most + 1).stream()
                .filter(found -> found.cost().isPossible())
                .map(found -> other(window.get(), found, asWritten))
                .filter(this::moves)
                .limit(most)
                .toList();
    }

    /** The ways of playing a passage without leaving a position, the cheapest first; what is written among them. */
    public List<Alternative> underOneHand(Passage passage) {
        var window = window(passage);
        if (window.isEmpty()) {
            return List.of();
        }
        var inside = window.get();
        var alone = new Window(inside.from(), inside.to(), inside.from(), inside.to());
        var moments = freed(alone);
        double asWritten = asWritten(alone);
        return IntStream.rangeClosed(1, neck.frets())
                .mapToObj(position -> Search.inPosition(neck, hand, moments, position))
                .flatMap(Optional::stream)
                .map(found -> other(alone, found, asWritten))
                .sorted((one, two) -> Double.compare(two.saved(), one.saved()))
                .toList();
    }

    /** The moments of a passage, from one index to before another, and with the neighbours that stay as they are. */
    private record Window(int from, int to, int outerFrom, int outerTo) {}

    private Optional<Window> window(Passage passage) {
        var inside = IntStream.range(0, soundings.size())
                .filter(i ->
                        passage.contains(soundings.get(i).notes().get(0).at().position()))
                .summaryStatistics();
        if (inside.getCount() == 0) {
            return Optional.empty();
        }
        int to = inside.getMax() + 1;
        return Optional.of(
                new Window(inside.getMin(), to, Math.max(0, inside.getMin() - 1), Math.min(soundings.size(), to + 1)));
    }

    private List<SoundingMoment> freed(Window window) {
        return IntStream.range(window.outerFrom(), window.outerTo())
                .mapToObj(i ->
                        i >= window.from() && i < window.to() ? soundings.get(i).anywhere(neck) : written.get(i))
                .toList();
    }

    private double asWritten(Window window) {
        return Search.best(neck, hand, written.subList(window.outerFrom(), window.outerTo()))
                .map(found -> found.cost().total())
                .orElse(0.0);
    }

    private Alternative other(Window window, Way found, double asWritten) {
        int skipped = window.from() - window.outerFrom();
        var grips = found.grips().subList(skipped, skipped + window.to() - window.from());
        var inside = new Way(grips, found.costs().subList(skipped, skipped + window.to() - window.from()));
        return new Alternative(
                stops(window.from(), inside),
                found.cost(),
                asWritten - found.cost().total(),
                inside.isUnderOneHand());
    }

    private List<Stop> stops(int first, Way found) {
        var all = new ArrayList<Stop>();
        for (int i = 0; i < found.grips().size(); i++) {
            var grip = found.grips().get(i);
            var sounding = soundings.get(first + i);
            for (int note = 0; note < sounding.beginning(); note++) {
                all.add(new Stop(sounding.notes().get(note).at(), grip.notes().get(note), grip.position()));
            }
        }
        return List.copyOf(all);
    }

    private boolean moves(Alternative other) {
        return other.stops().stream()
                .anyMatch(stop -> !place(stop.note()).equals(stop.fingered().place()));
    }

    private Place place(NoteAt note) {
        return byNote.get(note).fingered().place();
    }
}
