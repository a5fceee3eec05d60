package groundbass.comparison;

import static groundbass.comparison.Aspect.PITCH;
import static groundbass.comparison.Aspect.SIGNS;
import static groundbass.comparison.Aspect.TECHNIQUE;
import static groundbass.comparison.Aspect.WORDS;
import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assertions.assertTimeout;

import groundbass.comparison.Change.Changed;
import groundbass.comparison.Change.Difference;
import groundbass.comparison.Change.Inserted;
import groundbass.comparison.Change.Removed;
import groundbass.linetext.LineText;
import groundbass.score.Count;
import groundbass.score.Line;
import groundbass.text.Messages;
import java.time.Duration;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Random;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What is expected was read off the two texts by eye. */
class LineComparisonTest {
    private static final List<String> BARS = List.of(
            fourQuarters("E5", "E5", "A5", "A7"),
            fourQuarters("E3", "E3", "A3", "A5"),
            fourQuarters("A5", "A5", "D5", "D7"),
            fourQuarters("E0", "E0", "A2", "A3"));

    @Test
    void aLineIsTheSameAsItself() {
        assertThat(compare(BARS, BARS).isSame()).isTrue();
    }

    @Test
    void howItWasTypedDoesNotCount() {
        var copied = read("bar 1\n" + BARS.get(0) + "\n\nbar 2 = bar 1\n");
        var writtenOut = read("bar 1\n" + BARS.get(0) + "\n\nbar 2\n" + BARS.get(0) + "\n");
        assertThat(LineComparison.of(copied, writtenOut).isSame()).isTrue();
    }

    @Test
    void barsThatCameAndWentAreNamedByTheirNumbers() {
        var longer = List.of(BARS.get(0), "1-4 D9", "1-4 D7", BARS.get(1), BARS.get(2), BARS.get(3));
        assertThat(compare(BARS, longer).changes()).containsExactly(new Inserted(2, 3));
        assertThat(compare(longer, BARS).changes()).containsExactly(new Removed(2, 3));
        assertThat(compare(BARS, BARS.subList(0, 3)).changes()).containsExactly(new Removed(4, 4));
    }

    @Test
    void aBarThatMovedAndChangedIsFoundByWhatItShares() {
        var changed = List.of(BARS.get(0), "1-4 D9", fourQuarters("E3", "E3", "A3", "A7"), BARS.get(2), BARS.get(3));
        assertThat(compare(BARS, changed).changes())
                .containsExactly(new Inserted(2, 2), new Changed(2, 3, List.of(difference("4", PITCH))));
    }

    @Test
    void aChangeSaysWhichBarsOfEitherLineItIsAbout() {
        var other = List.of(BARS.get(0), "1-4 D9", fourQuarters("E3", "E3", "A3", "A7"), BARS.get(2));
        var changes = compare(BARS, other).changes();
        assertThat(changes).extracting(Change::earlier).containsExactly(Optional.empty(), bars(2, 2), bars(4, 4));
        assertThat(changes).extracting(Change::later).containsExactly(bars(2, 2), bars(3, 3), Optional.empty());
    }

    private static Optional<Change.Bars> bars(int first, int last) {
        return Optional.of(new Change.Bars(first, last));
    }

    /** E string, fret 5 is the pitch of the open A string: four strings a fourth apart (bass guitar, usual tuning). */
    @ParameterizedTest
    @CsvSource({
        "'1 E5\n2 E6\n3 A5\n4 A7', 2, PITCH",
        "'1 E5\n2 A0\n3 A5\n4 A7', 2, PLACE",
        "'1 E5\n2 E5 pop\n3 A5\n4 A7', 2, TECHNIQUE",
        "'1 E5\n2 E5 short\n3 A5\n4 A7', 2, TECHNIQUE",
        "'1 E5\n2 E5\n3 A5, A5\n4 A7', 3&, RHYTHM"
    })
    void whatChangedIsToldByCountAndKind(String bar, String count, Aspect aspect) {
        var changed = List.of(bar, BARS.get(1), BARS.get(2), BARS.get(3));
        var change = (Changed) compare(BARS, changed).changes().get(0);
        assertThat(change.after()).isEqualTo(1);
        assertThat(change.differences().stream()
                        .filter(difference -> difference.at().equals(Count.parse(count)))
                        .flatMap(difference -> difference.aspects().stream()))
                .contains(aspect);
    }

    @Test
    void aNoteThatIsAnotherAndStruckOtherwiseIsBoth() {
        var changed = List.of(fourQuarters("E5", "E7 pop", "A5", "A7"), BARS.get(1), BARS.get(2), BARS.get(3));
        assertThat(compare(BARS, changed).changes())
                .containsExactly(new Changed(1, 1, List.of(difference("2", PITCH, TECHNIQUE))));
    }

    @Test
    void chordsAndSignsAreToldToo() {
        var plain = read("bar 1 over Am7\n" + BARS.get(0) + "\n");
        var other = read("bar 1 over A7\n" + BARS.get(0) + "\nrepeat end x2\n");
        assertThat(LineComparison.of(plain, other).changes())
                .containsExactly(new Changed(
                        1, 1, List.of(new Difference(Optional.empty(), Set.of(SIGNS)), difference("1", WORDS))));
    }

    @Test
    void theHeadOfALineIsOneThing() {
        var slow = read("tempo 80\n\nbar 1\n" + BARS.get(0) + "\n");
        var fast = read("tempo 96\n\nbar 1\n" + BARS.get(0) + "\n");
        assertThat(LineComparison.of(slow, fast)).isEqualTo(new LineComparison(true, List.of()));
    }

    @Test
    void thatIsSaidInBothLanguages() {
        var changed = List.of(BARS.get(0), "1-4 D9", fourQuarters("A5", "A3 pop", "D5", "D9"), BARS.get(3));
        assertThat(said(BARS, changed, Locale.ENGLISH))
                .isEqualTo("bar 2: count 1 (rhythm, pitch), count 2 (rhythm), count 3 (rhythm), count 4 (rhythm); "
                        + "bar 3: count 2 (pitch, technique), count 4 (pitch)");
        assertThat(said(BARS, BARS.subList(0, 2), Locale.GERMAN)).isEqualTo("die Takte 3 bis 4 sind weg");
        assertThat(said(BARS, BARS.subList(0, 3), Locale.ENGLISH)).isEqualTo("bar 4 is gone");
    }

    @Test
    void ofManyPlacesTheLastAreCounted() {
        var all = BARS.stream().map(bar -> bar.replace('5', '6')).toList();
        assertThat(ComparisonWords.of(compare(BARS, all), 2).stream().map(Messages.of(Locale.ENGLISH)::say))
                .hasSize(2)
                .last()
                .isEqualTo("and 2 more places");
    }

    /** Whatever was inserted, removed or changed: those and no others are named. */
    @Test
    void anyChangeIsFoundWhereItWasMade() {
        long seed = new Random().nextLong();
        var chance = new Random(seed);
        for (int round = 0; round < 200; round++) {
            var bars = IntStream.range(0, 12)
                    .mapToObj(bar -> fourQuarters("E" + bar, "E" + (bar + 3), "A" + (bar + 1), "A" + (bar + 5)))
                    .collect(Collectors.toList());
            var before = List.copyOf(bars);
            int at = chance.nextInt(bars.size());
            var expected = spoil(bars, at, chance.nextInt(3));
            assertThat(compare(before, bars).changes())
                    .as("seed %d, round %d", seed, round)
                    .containsExactly(expected);
        }
    }

    private static Change spoil(List<String> bars, int at, int how) {
        switch (how) {
            case 0 -> {
                bars.add(at, "1-4 D9");
                return new Inserted(at + 1, at + 1);
            }
            case 1 -> {
                bars.remove(at);
                return new Removed(at + 1, at + 1);
            }
            default -> {
                bars.set(at, bars.get(at).replaceFirst("E\\d+", "E20"));
                return new Changed(at + 1, at + 1, List.of(difference("1", PITCH)));
            }
        }
    }

    /** The longest line that there can be, every bar of it changed. */
    @Test
    void twoLongLinesAreComparedInNoTime() {
        var one = IntStream.range(0, Line.MOST_BARS)
                .mapToObj(bar -> "1-4 E" + bar % 12)
                .toList();
        var other = IntStream.range(0, Line.MOST_BARS)
                .mapToObj(bar -> "1-4 A" + bar % 12)
                .toList();
        var before = read(text(one));
        var after = read(text(other));
        var comparison = assertTimeout(Duration.ofSeconds(20), () -> LineComparison.of(before, after));
        assertThat(comparison.changes()).hasSize(Line.MOST_BARS);
    }

    private static String fourQuarters(String first, String second, String third, String fourth) {
        return "1 %s\n2 %s\n3 %s\n4 %s".formatted(first, second, third, fourth);
    }

    private static Difference difference(String count, Aspect... aspects) {
        return new Difference(Count.parse(count), Set.of(aspects));
    }

    private static String said(List<String> before, List<String> after, Locale locale) {
        return ComparisonWords.of(compare(before, after), 8).stream()
                .map(Messages.of(locale)::say)
                .collect(Collectors.joining("; "));
    }

    private static LineComparison compare(List<String> before, List<String> after) {
        return LineComparison.of(read(text(before)), read(text(after)));
    }

    private static String text(List<String> bars) {
        return IntStream.range(0, bars.size())
                .mapToObj(i -> "bar " + (i + 1) + "\n" + bars.get(i) + "\n")
                .collect(Collectors.joining("\n"));
    }

    private static Line read(String text) {
        var reading = LineText.read(text);
        assertThat(reading.problems()).isEmpty();
        return reading.line();
    }
}
