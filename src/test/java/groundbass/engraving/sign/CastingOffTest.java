package groundbass.engraving.sign;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.engraving.mark.Group.Role;
import groundbass.engraving.mark.Kind;
import groundbass.engraving.options.Paper;
import groundbass.engraving.sheet.Layout;
import groundbass.engraving.spacing.Measuring;
import groundbass.linetext.LineText;
import groundbass.score.Fraction;
import groundbass.writing.Writing;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * How many bars stand in each system on A4, beside the same forms cast off by hand (ours): sections begin systems, four
 * bars or two to a phrase, no bar alone, nothing crowded (rule: casting-off-by-phrase; the principles are common
 * practice, no source).
 */
class CastingOffTest {
    private static final String SIXTEENTHS = "1-4 E3*1, Ex, E3, E3, E3, Ex, D5, E3, E3, Ex, E3, E3, E3, Ex, D5, E3";
    private static final String MIXED = "1 E3, Ex, E3, E3; 2 D5, E3; 3 E3, Ex, E3, E3; 4 D5, E3";
    private static final String EIGHTHS = "1-4 E1*1, A3, E1, A3, E1, A3, E1, A3";
    private static final String QUARTERS = "1-4 E1, A3, E1, A3";
    private static final String HALVES = "1-4 E1, A3";
    private static final String SHUFFLE = "1-3 E5*2, A4; 4-6 E5*2, A4; 7-9 E5*2, A4; 10-12 E5*2, A4";

    private static final Map<String, String> RHYTHMS = Map.of(
            "sixteenths", SIXTEENTHS,
            "mixed", MIXED,
            "eighths", EIGHTHS,
            "quarters", QUARTERS,
            "halves", HALVES,
            "shuffle", SHUFFLE);

    private static List<Integer> systems(String text) {
        return systems(text, Paper.A4);
    }

    private static List<Integer> systems(String text, Paper paper) {
        var reading = LineText.read(text);
        assertThat(reading.problems()).isEmpty();
        return Layout.of(Writing.of(reading.line()), TestWords.options(paper)).stream()
                .flatMap(page -> page.parts().stream())
                .filter(part -> part.group().role() == Role.SYSTEM)
                .map(part -> part.bars().size())
                .toList();
    }

    /** Bars of one rhythm, with lines of their own before some of them. */
    private static String form(String head, int bars, String rhythm, String line, Integer... before) {
        var text = new StringBuilder("title T\n" + head + "\n");
        for (int i = 1; i <= bars; i++) {
            text.append(List.of(before).contains(i) ? line.replace("#", "" + i) + "\n" : "");
            text.append("bar " + i + "\n" + RHYTHMS.get(rhythm).replace("; ", "\n") + "\n");
        }
        return text.toString();
    }

    private static String words(List<Integer> systems) {
        return systems.stream().map(String::valueOf).collect(Collectors.joining(" "));
    }

    @ParameterizedTest
    @CsvSource({
        "4, sixteenths, 2 2",
        "8, sixteenths, 2 2 2 2",
        "8, mixed, 2 2 2 2",
        "12, mixed, 2 2 2 2 2 2",
        "8, eighths, 4 4",
        "12, eighths, 4 4 4",
        "16, eighths, 4 4 4 4",
        "8, quarters, 4 4",
        "12, quarters, 4 4 4",
        "10, quarters, 4 4 2",
        "8, halves, 4 4",
        "16, halves, 4 4 4 4"
    })
    void aFormOfEqualBarsHasEqualSystems(int bars, String rhythm, String chosen) {
        assertThat(words(systems(form("key F major", bars, rhythm, "")))).isEqualTo(chosen);
    }

    @Test
    void aTwelveBarBluesInTwelveEighthsStandsInTwos() {
        assertThat(words(systems(form("key D major\nmeter 12/8", 12, "shuffle", ""))))
                .isEqualTo("2 2 2 2 2 2");
    }

    @Test // rule: casting-off-by-phrase: on paper as narrow as a phone, though the section begins after it
    void aPickupStandsWithTheBarThatItLeadsTo() {
        var text = "bar 0\n4 E1, A3\nsection Way\nbar 1\n" + QUARTERS + "\nbar 2\n" + QUARTERS + "\nbar 3\n" + QUARTERS
                + "\n";
        for (double width : new double[] {36, 48, 60}) {
            assertThat(systems(text, Paper.screen(width)).get(0)).as("" + width).isGreaterThan(1);
        }
    }

    @Test
    void sectionsBeginSystems() {
        assertThat(words(systems(form("key F major", 8, "sixteenths", "section Part #", 1, 5))))
                .isEqualTo("2 2 2 2");
        assertThat(words(systems(form("key F major", 14, "quarters", "section Part #", 1, 5, 9))))
                .isIn("4 4 3 3", "4 4 4 2");
        assertThat(words(systems(form("key F major", 12, "quarters", "section Part #", 1, 7))))
                .isEqualTo("3 3 3 3");
    }

    @Test
    void noBarStandsAloneUnlessTheWriterWantsIt() {
        for (int bars = 2; bars < 30; bars++) {
            for (var rhythm : RHYTHMS.keySet().stream().sorted().toList()) {
                boolean tooDense = rhythm.equals("sixteenths") && bars % 2 == 1; // two to a system, and one is left
                if (!rhythm.equals("shuffle") && !tooDense) {
                    assertThat(systems(form("key F major", bars, rhythm, "")))
                            .as(bars + " bars of " + rhythm)
                            .doesNotContain(1);
                }
            }
        }
        assertThat(words(systems(form("key F major", 9, "quarters", "new system", 2))))
                .isEqualTo("1 4 4");
    }

    /** On a telephone one bar to a system is as even as it gets. */
    @Test
    void narrowPaperHasEvenSystemsToo() {
        var line = LineText.read(form("key F major", 8, "mixed", "")).line();
        var page =
                Layout.of(Writing.of(line), TestWords.options(Paper.screen(48))).get(0);
        assertThat(page.parts())
                .filteredOn(part -> part.group().role() == Role.SYSTEM)
                .hasSize(8);
    }

    @Test
    void aPickupIsNoBarOfThePhrase() {
        var text = "title T\nkey F major\nbar 0\n4 E1\n"
                + IntStream.rangeClosed(1, 8)
                        .mapToObj(i -> "bar " + i + "\n" + QUARTERS + "\n")
                        .collect(Collectors.joining());
        assertThat(words(systems(text))).isEqualTo("5 4");
    }

    // rule: last-system-ragged
    @Test
    void everySystemButTheLastIsFull() {
        var line = LineText.read(form("key F major", 9, "quarters", "new system", 2, 5))
                .line();
        var rights = new ArrayList<Double>();
        for (var page : Layout.of(Writing.of(line), TestWords.options(Paper.A4))) {
            page.parts().stream()
                    .filter(part -> part.group().role() == Role.SYSTEM)
                    .forEach(part -> rights.add(part.marks().stream()
                            .filter(mark -> mark.kind() == Kind.STAFF_LINE)
                            .mapToDouble(mark -> mark.box().right())
                            .max()
                            .orElseThrow()));
        }
        assertThat(rights).hasSizeGreaterThan(2);
        assertThat(rights.subList(0, rights.size() - 1))
                .allMatch(right -> Math.abs(right - (Paper.A4.width() - Paper.A4.margin())) < 0.01);
    }

    // rule: spacing-even
    @ParameterizedTest
    @CsvSource({
        "'1 E3, E4, E3, E4; 2 E3, E4; 3 E3, E5, E3, E4; 4 E12'",
        "'1 E3 as G, E6, E3, E6; 2 A3, A4; 3 E3; 4 E12, E11, E10, E11'",
        "'1 D12, D14, D12, D11; 2 D12; 3 A3, A4, A3, A2; 4 A3, D4'"
    })
    void equalNotesStandEquallyWideAndLongerOnesWider(String beats) {
        var drawn = Drawn.of("title T\nkey C major\nbar 1\n" + beats.replace("; ", "\n") + "\nbar 2\n"
                + beats.replace("; ", "\n") + "\n");
        var sixteenths = new ArrayList<Double>();
        var longer = new ArrayList<Double>();
        var heads = drawn.of(Kind.HEAD);
        for (int i = 0; i + 1 < heads.size(); i++) {
            var owner = heads.get(i).owner().orElseThrow();
            boolean sameBar = owner.from().bar()
                    == heads.get(i + 1).owner().orElseThrow().from().bar();
            var length = owner.to().at().minus(owner.from().at());
            double gap = heads.get(i + 1).box().left() - heads.get(i).box().left();
            if (sameBar) {
                (length.equals(Fraction.of(1, 16)) ? sixteenths : longer).add(gap);
            }
        }
        double widest = sixteenths.stream().mapToDouble(gap -> gap).max().orElseThrow();
        double narrowest = sixteenths.stream().mapToDouble(gap -> gap).min().orElseThrow();
        assertThat(widest / narrowest).isLessThan(1.25);
        assertThat(longer).isNotEmpty().allMatch(gap -> gap > widest);
    }

    // rule: spacing-unit
    @Test
    void sixteenthsHaveTheirNaturalWidth() {
        double natural = Measuring.natural(Fraction.of(1, 16));
        assertThat(natural).isBetween(2.6, 2.8);
    }
}
