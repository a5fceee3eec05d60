package groundbass.fingering;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import groundbass.fingering.Cost.Part;
import groundbass.score.Arrival;
import groundbass.score.Place;
import groundbass.score.Technique;
import groundbass.score.Tuning;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class SearchTest {
    private static final List<Fretboard> NECKS = List.of(
            new Fretboard(Tuning.STANDARD, 20, Fretboard.LONG),
            new Fretboard(Tuning.FIVE_STRING, 24, Fretboard.LONG),
            new Fretboard(Tuning.sounding("G2", "D2", "A1", "D1"), 20, Fretboard.SHORT));

    /** Every path through every grip is priced by itself; the search may not miss a cheaper one. */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4})
    void nothingIsCheaperThanWhatTheSearchFinds(long seed) {
        var random = new Random(seed);
        for (var neck : NECKS) {
            var moments = decorated(Necks.random(neck, random, 4, 0.1 + random.nextDouble()), random);
            var all = new Every(neck, moments).cheapestByPlaces();
            var found = Search.ways(neck, Hand.AVERAGE, moments, 5);
            assertThat(found.get(0).cost().total()).as("seed " + seed).isCloseTo(all.get(0), within(1e-9));
            for (int i = 0; i < found.size(); i++) {
                assertThat(found.get(i).cost().total())
                        .as("seed %d, way %d", seed, i)
                        .isCloseTo(all.get(i), within(1e-9));
            }
            assertThat(found).hasSize(Math.min(5, all.size()));
        }
    }

    /** Some notes fixed, struck, reached or held, so that every price is asked for. */
    private static List<SoundingMoment> decorated(List<SoundingMoment> moments, Random random) {
        var all = new ArrayList<SoundingMoment>();
        for (int i = 0; i < moments.size(); i++) {
            var moment = moments.get(i);
            var note = moment.notes().get(0);
            switch (random.nextInt(7)) {
                case 0 -> note = note.among(note.places().subList(0, 1));
                case 1 -> note = note.struck(Technique.POP);
                case 2 -> note = note.struck(Technique.SLAP);
                case 3 -> note = i == 0 ? note : note.reached(Arrival.Kind.values()[random.nextInt(3)]);
                case 4 -> note = pressed(note);
                default -> {}
            }
            var end = random.nextBoolean() ? moment.end() : moment.start() + 0.01;
            all.add(SoundingMoment.of(moment.start(), end, note));
        }
        return all;
    }

    /** All paths, one after the other. */
    private static final class Every {
        private final List<SoundingMoment> moments;
        private final List<List<Hold>> layers;
        private final Map<Long, Double> cheapest = new LinkedHashMap<>();

        Every(Fretboard neck, List<SoundingMoment> moments) {
            var grips = new Grips(neck, new Effort(neck, Hand.AVERAGE));
            this.moments = moments;
            this.layers = grips.of(moments);
        }

        List<Double> cheapestByPlaces() {
            walk(0, new Hold[layers.size()], 0, 0);
            return cheapest.values().stream().sorted(Comparator.naturalOrder()).toList();
        }

        private void walk(int layer, Hold[] path, double cost, long places) {
            if (layer == layers.size()) {
                cheapest.merge(places, cost, Math::min);
                return;
            }
            for (var hold : layers.get(layer)) {
                double moving = layer == 0
                        ? 0
                        : new Movement(moments.get(layer - 1), moments.get(layer)).cost(path[layer - 1], hold);
                path[layer] = hold;
                walk(layer + 1, path, cost + hold.cost + moving, places * 10_007 + place(hold));
            }
        }

        /** One note a moment: string and fret. */
        private static long place(Hold hold) {
            return hold.strings[0] * 100L + hold.frets[0];
        }
    }

    /** rule: fingering-cost: one a fret of a shift, 0.5 a string, 0.05 a millimetre, 0.3 above fret 12, 0.5 saved. */
    @Test
    void aWayCostsWhatTheRuleSays() {
        double aFretFarther = part(Part.SHIFT, at(4, 3), at(4, 21)) - part(Part.SHIFT, at(4, 3), at(4, 20));
        assertThat(aFretFarther).isCloseTo(1, within(1e-9));
        assertThat(part(Part.CROSSING, at(4, 5), at(3, 5))).isCloseTo(0.5, within(1e-9));
        assertThat(part(Part.CROSSING, at(4, 5), at(2, 5))).isCloseTo(1, within(1e-9));
        assertThat(part(Part.OPEN, at(4, 0))).isCloseTo(-0.5, within(1e-9));
        assertThat(part(Part.HIGH, at(4, 13)) - part(Part.HIGH, at(4, 12)))
                .as("a fret above the twelfth")
                .isCloseTo(0.3, within(0.03));
        // rule: fret-distance, hand-reach: frets 1 to 4 are 129.7 mm apart, 105 are reached at ease
        double stretched = Search.best(
                        Necks.FOUR,
                        Hand.AVERAGE,
                        List.of(SoundingMoment.of(
                                0, 1, NoteConstraint.at(Place.of(4, 1)), NoteConstraint.at(Place.of(3, 4)))))
                .orElseThrow()
                .cost()
                .of(Part.STRETCH);
        assertThat(stretched).isCloseTo(0.05 * (129.7 - 105), within(0.005));
    }

    private static NoteConstraint at(int string, int fret) {
        return NoteConstraint.at(Place.of(string, fret));
    }

    /** What one kind of effort costs on the cheapest way through notes of a second each. */
    private static double part(Part part, NoteConstraint... notes) {
        var moments = IntStream.range(0, notes.length)
                .mapToObj(second -> SoundingMoment.of(second, second + 1, notes[second]))
                .toList();
        return Search.best(Necks.FOUR, Hand.AVERAGE, moments)
                .orElseThrow()
                .cost()
                .of(part);
    }

    @Test
    void otherWaysComeByCostAndDifferInPlaces() {
        var moments = Necks.random(Necks.FOUR, new Random(11), 16, 0.25);
        var ways = Search.ways(Necks.FOUR, Hand.AVERAGE, moments, 8);
        assertThat(ways).isSortedAccordingTo(Comparator.comparingDouble(way -> way.cost()
                .total()));
        assertThat(ways.stream().map(way -> Necks.places(Necks.FOUR, way)))
                .hasSize(8)
                .doesNotHaveDuplicates();
    }

    /** rule: open-strings: MIDI 27 lies below the open E. */
    @Test
    void aPitchBelowTheNeckHasNoWay() {
        assertThat(Search.best(Necks.FOUR, Hand.AVERAGE, Necks.melody(Necks.FOUR, 1, 40, 27)))
                .isEmpty();
        assertThat(Search.best(Necks.FOUR, Hand.AVERAGE, List.of())).isEmpty();
    }

    @Test
    void whatIsFixedStays() {
        var moments = List.of(
                SoundingMoment.of(0, 1, NoteConstraint.pitch(Necks.FOUR, 40).onString(4)),
                SoundingMoment.of(1, 2, NoteConstraint.pitch(Necks.FOUR, 43)));
        var way = Search.best(Necks.FOUR, Hand.AVERAGE, moments).orElseThrow();
        assertThat(Necks.places(Necks.FOUR, way)).startsWith("E12 ");
    }

    @Test
    void aHammerStaysOnItsString() {
        var moments = List.of(
                SoundingMoment.of(0, 0.2, NoteConstraint.pitch(Necks.FOUR, 38)),
                SoundingMoment.of(0.2, 0.4, NoteConstraint.pitch(Necks.FOUR, 43).reached(Arrival.Kind.HAMMER)));
        var ways = Search.ways(Necks.FOUR, Hand.AVERAGE, moments, 20);
        assertThat(Necks.places(Necks.FOUR, ways.get(0))).isEqualTo("D0 D5");
        assertThat(ways).anyMatch(way -> !isOnOneString(way));
        assertThat(ways).filteredOn(way -> !isOnOneString(way)).isNotEmpty().noneMatch(way -> way.cost()
                .isPossible());
    }

    private static boolean isOnOneString(Way way) {
        return way.grips().stream()
                        .map(grip -> grip.notes().get(0).place().string())
                        .distinct()
                        .count()
                == 1;
    }

    @Test
    void aHeldNoteKeepsItsFinger() {
        var low = NoteConstraint.at(Place.of(4, 5));
        var moments = List.of(
                SoundingMoment.of(0, 0.5, low, NoteConstraint.pitch(Necks.FOUR, 43)),
                SoundingMoment.of(0.5, 1, low.sustained(), NoteConstraint.pitch(Necks.FOUR, 47)));
        var way = Search.best(Necks.FOUR, Hand.AVERAGE, moments).orElseThrow();
        assertThat(way.cost().isPossible()).isTrue();
        assertThat(way.grips().get(1).notes().get(0))
                .isEqualTo(way.grips().get(0).notes().get(0));
    }

    @Test
    void noTwoNotesShareAString() {
        var moments = List.of(
                SoundingMoment.of(0, 1, NoteConstraint.pitch(Necks.FOUR, 40), NoteConstraint.pitch(Necks.FOUR, 41)));
        assertThat(Search.ways(Necks.FOUR, Hand.AVERAGE, moments, 20))
                .isNotEmpty()
                .allSatisfy(way -> assertThat(way.grips().get(0).notes().stream()
                                .map(note -> note.place().string()))
                        .hasSize(2)
                        .doesNotHaveDuplicates());
    }

    private static NoteConstraint pressed(NoteConstraint note) {
        return new NoteConstraint(note.places(), note.finger(), note.stroke(), note.arrival(), true, note.held());
    }
}
