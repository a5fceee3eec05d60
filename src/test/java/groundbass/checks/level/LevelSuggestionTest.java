package groundbass.checks.level;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.checks.Said;
import groundbass.linetext.LineText;
import groundbass.score.RandomLines;
import groundbass.text.Messages;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.Locale;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class LevelSuggestionTest {
    /** The levels that the demo's studio gave its lessons. */
    @ParameterizedTest
    @CsvSource({
        "01-rope-and-pulley, ADVANCED",
        "02-night-ferry, INTERMEDIATE",
        "03-slow-tide, BEGINNER",
        "04-below-the-waterline, INTERMEDIATE",
        "05-three-legged-gull, INTERMEDIATE",
        "06-last-lantern-home, INTERMEDIATE"
    })
    void theSuggestedLevelIsTheStatedOne(String episode, Difficulty stated) throws IOException {
        String text = Files.readString(Path.of("seed-data", "harbour-rounds", episode, "line.txt"));
        var suggestion = LevelSuggestion.of(LineText.read(text).line());
        assertThat(suggestion.level()).as(suggestion.toString()).isEqualTo(stated);
    }

    @Test
    void plainQuartersAreForBeginners() {
        var suggestion = LevelSuggestion.of(Said.bars("bar 1\n1-4 E3, E3, E3, E3\n"));
        assertThat(suggestion.level()).isEqualTo(Difficulty.BEGINNER);
        assertThat(suggestion.demands()).isEmpty();
    }

    @Test
    void theSameLineIsHarderWhenItIsFaster() {
        String bars = "key C major\nmeter 4/4\ntempo %d\nstrings E A D G\n\nbar 1\n1 2 3 4 E3, E3, E5, E3\n";
        var slow = LevelSuggestion.of(Said.line(String.format(Locale.ROOT, bars, 60)));
        var fast = LevelSuggestion.of(Said.line(String.format(Locale.ROOT, bars, 160)));
        assertThat(fast.weight()).isGreaterThan(slow.weight());
        assertThat(fast.demands().get(0).kind()).isEqualTo(Demand.Kind.SPEED);
    }

    @Test
    void everyReasonCanBeSaid() {
        var line = Said.bars("bar 1 over C\n1 E3 slap, Ex, D5 pop, D7 hammer\n2-4 E3+D5, rest, E3, rest\n");
        var suggestion = LevelSuggestion.of(line);
        assertThat(suggestion.demands()).hasSizeGreaterThan(2);
        for (var demand : suggestion.demands()) {
            assertThat(Messages.of(Locale.ENGLISH).say(demand.reason()))
                    .doesNotContain("{")
                    .isNotBlank();
            assertThat(Messages.of(Locale.GERMAN).say(demand.reason()))
                    .doesNotContain("{")
                    .isNotBlank();
        }
        assertThat(Messages.of(Locale.GERMAN).has(suggestion.level().messageKey()))
                .isTrue();
    }

    @Test
    void everyLineGetsALevelAndReasonsByWeight() {
        for (long seed = 1; seed <= 60; seed++) {
            var suggestion = LevelSuggestion.of(RandomLines.line(seed));
            assertThat(suggestion.demands())
                    .as("seed " + seed)
                    .isSortedAccordingTo(Comparator.comparingDouble(demand -> -demand.weight()))
                    .isNotEmpty()
                    .allMatch(demand -> demand.weight() > 0);
        }
    }

    @Test
    void aLineWithoutNotesIsForBeginners() {
        assertThat(LevelSuggestion.of(Said.bars("bar 1\n1-4 rest\n")).level()).isEqualTo(Difficulty.BEGINNER);
    }
}
