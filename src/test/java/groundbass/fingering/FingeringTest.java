package groundbass.fingering;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.fingering.Cost.Part;
import groundbass.linetext.LineText;
import groundbass.score.Line;
import groundbass.score.NoteAt;
import groundbass.score.Passage;
import groundbass.score.Place;
import groundbass.score.Place.Fretted;
import groundbass.score.RandomLines;
import groundbass.score.Tuning;
import groundbass.text.Messages;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;

class FingeringTest {
    /** A fragment of the A minor pentatonic, strewn over the neck; common practice, no source. */
    private static final Line STREWN = line("""
            bar 1
            1   E5, A3
            2   A5, E12
            3   D5, A5
            4   A3, E5
            """);

    private static Line line(String bars) {
        return LineText.read("""
                key A minor
                meter 4/4
                tempo 100
                strings E A D G

                """ + bars).line();
    }

    private static String places(Line line, List<Stop> stops) {
        return stops.stream()
                .map(stop -> line.header().tuning().typed(stop.fingered().place()))
                .collect(Collectors.joining(" "));
    }

    @Test
    void theWrittenPlacesGetFingersAndPositions() {
        var line = line("""
                bar 1
                1   E5, E8
                2   A5, A7
                3   D5, D7
                4   D7, Dx
                """);
        var stops = Fingering.of(line).stops();
        assertThat(places(line, stops)).isEqualTo("E5 E8 A5 A7 D5 D7 D7 Dx");
        assertThat(stops).extracting(stop -> stop.fingered().finger()).containsExactly(1, 4, 1, 3, 1, 3, 3, 0);
        assertThat(stops).extracting(Stop::position).containsOnly(5);
    }

    @Test
    void aWrittenFingerIsObeyed() {
        var line = line("""
                bar 1
                1-4   E5 with 3, E6
                """);
        assertThat(Fingering.of(line).stops().get(0).fingered().finger()).isEqualTo(3);
    }

    @Test
    void strewnNotesLieTogetherElsewhere() {
        var fingering = Fingering.of(STREWN);
        var best = fingering.others(Passage.bar(1), 3).get(0);
        assertThat(best.saved()).isPositive();
        assertThat(best.cost().of(Part.SHIFT)).isLessThan(fingering.cost().of(Part.SHIFT));
        assertThat(sounding(best.stops())).isEqualTo(sounding(fingering.stops()));
        var fifth = fingering.underOneHand(Passage.bar(1)).stream()
                .filter(other -> other.position() == 5)
                .findFirst()
                .orElseThrow();
        assertThat(places(STREWN, fifth.stops())).isEqualTo("E5 E8 A5 A7 D5 A5 E8 E5");
        assertThat(fifth.underOneHand()).isTrue();
    }

    @Test
    void otherWaysAreOthersAndComeByCost() {
        var fingering = Fingering.of(STREWN);
        var others = fingering.others(Passage.bar(1), 6);
        assertThat(others).hasSize(6).isSortedAccordingTo(Comparator.comparingDouble(other -> -other.saved()));
        assertThat(others.stream().map(other -> places(STREWN, other.stops())))
                .doesNotHaveDuplicates()
                .doesNotContain(places(STREWN, fingering.stops()));
    }

    @Test
    void whatLiesOutsideThePassageStays() {
        var line = line("""
                bar 1
                1-4   E5, E8, A12, A7
                bar 2
                1-4   E12, A12, E3, E1
                """);
        var others = Fingering.of(line).others(Passage.bar(2), 4);
        assertThat(others).isNotEmpty().allSatisfy(other -> assertThat(other.stops())
                .isNotEmpty()
                .allMatch(stop -> stop.note().position().bar() == 2));
    }

    @Test
    void aPassageWithoutNotesHasNoWays() {
        assertThat(Fingering.of(line("bar 1\n1-4 rest\n")).others(Passage.bar(1), 3))
                .isEmpty();
        assertThat(Fingering.of(line("bar 1\n1-4 rest\n")).stops()).isEmpty();
    }

    @Test
    void everyLineGetsAFingeringOfEveryNote() {
        for (long seed = 1; seed <= 60; seed++) {
            var line = RandomLines.line(seed);
            var fingering = Fingering.of(line);
            var written =
                    line.bars().stream().mapToInt(bar -> bar.notes().size()).sum();
            assertThat(fingering.stops()).as("seed " + seed).hasSize(written);
            int number = line.firstNumber();
            for (var bar : line.bars()) {
                for (var note : bar.notes()) {
                    var stop = fingering.at(NoteAt.of(number, note)).orElseThrow();
                    assertThat(stop.fingered().place()).isEqualTo(note.place());
                }
                number++;
            }
        }
    }

    @Test
    void everyPartOfTheCostHasAName() {
        assertThat(Part.values()).allMatch(part -> Messages.of(Locale.GERMAN).has(part.messageKey()));
    }

    private static List<Integer> sounding(List<Stop> stops) {
        return stops.stream().map(stop -> midi(stop.fingered().place())).toList();
    }

    private static int midi(Place place) {
        return Tuning.STANDARD.midi((Fretted) place);
    }
}
