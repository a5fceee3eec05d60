package groundbass.engraving.sign;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import groundbass.engraving.mark.Box;
import groundbass.engraving.mark.Glyph;
import groundbass.engraving.mark.Kind;
import groundbass.engraving.mark.Mark;
import groundbass.engraving.options.Paper;
import groundbass.engraving.options.Staves;
import org.junit.jupiter.api.Test;

/** Where things stand along a system. */
class SpacingRulesTest {
    @Test // rule: spacing-least-gap: widths never below the rods: accidental, head, dot and 0.3 at least
    void columnsNeverStandNearerThanWhatIsInThem() {
        var drawn = Drawn.of("bar 1\n1-4  E2 as F#*2, E3, E4 as G#*2, E3, E2 as F#*2\n", Staves.NOTATION_ONLY);
        assertThat(drawn.of(Kind.ACCIDENTAL)).hasSize(3);
        for (int i = 1; i < drawn.of(Kind.ACCIDENTAL).size(); i++) {
            var sign = drawn.box(Kind.ACCIDENTAL, i);
            var before = drawn.of(Kind.HEAD).stream()
                    .map(Mark::box)
                    .filter(head -> head.right() <= sign.left())
                    .mapToDouble(Box::right)
                    .max()
                    .orElseThrow();
            assertThat(sign.left() - before).isGreaterThanOrEqualTo(0.3 - 1e-6);
        }
    }

    @Test // rule: spacing-alike: the same duration gets the same width in a system when nothing obstructs
    void likeDurationsAreLikeWide() {
        var drawn = Drawn.of("bar 1\n1-4  E0, E1, E3, E5\nbar 2\n1-4  E0, E1, E3, E5\n");
        double first = drawn.at(Kind.HEAD, 1).x() - drawn.at(Kind.HEAD, 0).x();
        for (int i : new int[] {2, 3, 5, 6, 7}) {
            assertThat(drawn.at(Kind.HEAD, i).x() - drawn.at(Kind.HEAD, i - 1).x())
                    .isCloseTo(first, within(1e-6));
        }
    }

    @Test // rule: numbers-under-heads, tab-line-gap: the number is centred under the head and on its string
    void numbersStandUnderTheirHeads() {
        var drawn = Drawn.of("bar 1\n1-4  E0, A3, D12, G5\n");
        for (int i = 0; i < 4; i++) {
            assertThat(drawn.box(Kind.FRET, i).middle())
                    .isCloseTo(drawn.box(Kind.HEAD, i).middle(), within(0.05));
        }
        double highest = drawn.of(Kind.STAFF_LINE).stream()
                .map(Mark::box)
                .filter(line -> line.top() > drawn.top() + 4.5)
                .mapToDouble(line -> (line.top() + line.bottom()) / 2)
                .min()
                .orElseThrow();
        var number = drawn.box(Kind.FRET, 3);
        assertThat((number.top() + number.bottom()) / 2).isCloseTo(highest, within(0.1));
    }

    /**
     * rule: system-opening: clef 0.75 to 1 from the left, signature and time about 1 after, the first note 1.5 to 2
     * later.
     */
    @Test
    void aSystemOpensWithItsDistances() {
        var drawn = Drawn.of("key D major\nbar 1\n1-4  E0, E2, E3, E5\n", Staves.NOTATION_ONLY);
        double left = drawn.box(Kind.STAFF_LINE, 0).left();
        assertThat(drawn.box(Kind.CLEF, 0).left() - left).isBetween(0.75, 1.0);
        assertThat(drawn.box(Kind.KEY, 0).left() - drawn.box(Kind.CLEF, 0).right())
                .isBetween(0.75, 1.0);
        double time = drawn.box(Kind.TIME, 0).left() - drawn.box(Kind.KEY, 1).right();
        assertThat(time).isCloseTo(1, within(0.1));
        double note = drawn.box(Kind.HEAD, 0).left() - drawn.box(Kind.TIME, 0).right();
        assertThat(note).isBetween(1.5, 2.0);
    }

    @Test // rule: system-opening: the time only on the first system and at changes
    void theTimeIsSaidOnce() {
        var bar = "bar\n1-4  E0, E1, E3, E5\n";
        var drawn = Drawn.of(bar + "new system\n" + bar + "new system\nmeter 3/4\nbar\n1-3 E0\n", Staves.NOTATION_ONLY);
        // 4/4 once, 3/4 at the change and as a warning at the end of the system before
        assertThat(drawn.glyphs(Kind.TIME)).hasSize(6);
        assertThat(drawn.of(Kind.CLEF)).hasSize(3);
    }

    @Test // rule: change-announced: a new key is announced at the end of the system before
    void aNewKeyIsAnnounced() {
        var bar = "bar\n1-4  E0, E1, E3, E5\n";
        var drawn = Drawn.of(bar + "new system\nkey D major\n" + bar, Staves.NOTATION_ONLY);
        assertThat(drawn.glyphs(Kind.KEY)).hasSize(4).containsOnly(Glyph.SHARP);
        double first = drawn.box(Kind.CLEF, 0).bottom();
        assertThat(drawn.of(Kind.KEY).stream().filter(key -> key.box().top() < first))
                .hasSize(2);
    }

    @Test // rule: barline-to-note: 1 to 1.5 between a barline and the next note
    void notesKeepTheirDistanceFromTheBarline() {
        var drawn = Drawn.of("bar 1\n1-4  E1, E3, E1, E3\nbar 2\n1-4  E1, E3, E1, E3\n", Staves.NOTATION_ONLY);
        double gap = drawn.box(Kind.HEAD, 4).left() - drawn.box(Kind.BARLINE, 1).right();
        assertThat(gap).isBetween(1.0, 1.5);
    }

    @Test // rule: staff-size: staves of seven millimetres; the tablature's lines stand 1.5 times as far apart
    void stavesHaveTheirUsualSize() {
        assertThat(4 * Paper.A4.staffSpace()).isEqualTo(7.0);
        var lines = Drawn.of("bar 1\n1-4  D0\n", Staves.TAB_ONLY).of(Kind.STAFF_LINE).stream()
                .map(line -> line.box().top())
                .distinct()
                .sorted()
                .toList();
        assertThat(lines).hasSize(4);
        for (int line = 1; line < 4; line++) {
            assertThat(lines.get(line) - lines.get(line - 1)).isCloseTo(1.5, within(1e-9));
        }
    }

    @Test // rule: staves-apart: five to six spaces between the staves at least
    void theStavesStandApart() {
        var drawn = Drawn.of("bar 1\n1-4  D0\n");
        double tab = drawn.of(Kind.STAFF_LINE).stream()
                .map(Mark::box)
                .filter(line -> line.top() > drawn.top() + 4.5)
                .mapToDouble(line -> (line.top() + line.bottom()) / 2)
                .min()
                .orElseThrow();
        assertThat(tab - drawn.top() - 4).isGreaterThanOrEqualTo(5 - 1e-9);
    }
}
