package groundbass.engraving.sign;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import groundbass.engraving.mark.Kind;
import groundbass.engraving.mark.Mark;
import groundbass.engraving.mark.Shape;
import groundbass.engraving.options.Aids;
import groundbass.engraving.options.Paper;
import java.util.Comparator;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** rule: counts-row. The expected rows are what a teacher writes under such bars (common practice, no source). */
class CountRowTest {
    private static Drawn drawn(String line) {
        return Drawn.of(line, TestWords.options(Paper.A4).with(new Aids(true, false)));
    }

    private static String row(Drawn drawn) {
        return drawn.of(Kind.COUNT).stream()
                .sorted(Comparator.comparingDouble(mark -> mark.box().left()))
                .map(mark -> ((Shape.Run) mark.shape()).text())
                .collect(Collectors.joining(" "));
    }

    @ParameterizedTest
    @CsvSource(delimiter = '|', textBlock = """
            4/4 | 1-4 E0, E1                     | 1 (2) 3 (4)
            4/4 | 1-4 E0, E1, E2, E3             | 1 2 3 4
            4/4 | 1-4 E0, E1, E0, E1, E0, E1, E0, E1 | 1 & 2 & 3 & 4 &
            4/4 | 1 E0, E1, E0, E1; 2-4 E0       | 1 e & a 2 (3) (4)
            4/4 | 1 rest; 2 rest, E0; 3-4 E0     | (1) (2) & 3 (4)
            4/4 | 1-2 E0, E1, E2; 3-4 E3         | 1 · (2) · 3 (4)
            6/8 | 1-3 A0, A2, A3; 4-6 A5         | 1 2 3 4 (5) (6)
            3/4 | 1-2 A0; 3 A2, A3               | 1 (2) 3 &
            """)
    void aBarIsCountedAsItIsPlayed(String meter, String events, String counted) {
        String bar = events.strip().replace("; ", "\n");
        assertThat(row(drawn("meter " + meter + "\nbar 1\n" + bar + "\n"))).isEqualTo(counted);
    }

    @Test
    void aNoteThatIsHeldOverTheBarlineIsWaitedOut() {
        assertThat(row(drawn("bar 1\n1-4 E0, E3\nbar 2\n1-2 hold\n3-4 E5\n"))).isEqualTo("1 (2) 3 (4) (1) (2) 3 (4)");
    }

    @Test
    void aPickupIsCountedFromItsOwnCount() {
        assertThat(row(drawn("bar 0\n4 A0, A2\nbar 1\n1-4 A3, A5\n"))).isEqualTo("4 & 1 (2) 3 (4)");
    }

    @Test
    void aBarOfSilenceHasNoCounts() {
        assertThat(row(drawn("bar 1\n1-4 rest\nbar 2\n1-4 E0, E1, E2, E3\n"))).isEqualTo("1 2 3 4");
    }

    @Test
    void countsStandUnderTheirNotesOnOneBaselineInPaleInk() {
        var drawn = drawn("bar 1 over Am7\n1 E5 slap, E7 pop\n2-4 E5, E3, E5\n");
        var counts = drawn.of(Kind.COUNT);
        assertThat(counts).hasSizeGreaterThan(3);
        assertThat(counts.stream().map(mark -> run(mark).at().y()).distinct()).hasSize(1);
        assertThat(counts).allMatch(mark -> run(mark).pale());
        assertThat(drawn.of(Kind.FRET))
                .allMatch(fret -> fret.box().bottom() < counts.get(0).box().top());
        for (int i = 0; i < drawn.of(Kind.HEAD).size(); i++) {
            var head = drawn.box(Kind.HEAD, i);
            double middle = (head.left() + head.right()) / 2;
            assertThat(counts).anySatisfy(mark -> assertThat(run(mark).at().x()).isCloseTo(middle, within(0.2)));
        }
    }

    private static Shape.Run run(Mark mark) {
        return (Shape.Run) mark.shape();
    }

    @Test
    void nothingIsCountedUnasked() {
        assertThat(Drawn.of("bar 1\n1-4 E0, E1\n").of(Kind.COUNT)).isEmpty();
    }

    @Test // rule: bar-numbers
    void everyBarIsNumberedWhereThatIsChosen() {
        String bar = "bar 1\n1-4 E0, E1\n";
        var line = bar + bar.replace("1\n", "2\n") + "new system\n" + bar.replace("bar 1", "bar 3")
                + bar.replace("bar 1", "bar 4");
        var drawn = Drawn.of(line, TestWords.options(Paper.A4).with(new Aids(false, true)));
        assertThat(drawn.texts(Kind.BAR_NUMBER)).containsExactly("2", "3", "4");
        assertThat(drawn.box(Kind.BAR_NUMBER, 0).left())
                .isCloseTo(drawn.box(Kind.HEAD, 2).left(), within(2.5));
    }
}
