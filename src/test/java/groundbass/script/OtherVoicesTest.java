package groundbass.script;

import static org.junit.jupiter.api.Assertions.assertTrue;

import groundbass.score.Line;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.junit.jupiter.api.Test;

/**
 * Sentences in other voices than the frozen ones, on all lines of the demo series. They were written together with the
 * code, so this keeps what works working and measures nothing else.
 */
class OtherVoicesTest {
    private static final Map<String, Line> LINES = Map.of(
            "01", FrozenSentencesTest.line("01-rope-and-pulley"),
            "02", FrozenSentencesTest.line("02-night-ferry"),
            "03", FrozenSentencesTest.line("03-slow-tide"),
            "04", FrozenSentencesTest.line("04-below-the-waterline"),
            "05", FrozenSentencesTest.line("05-three-legged-gull"),
            "06", FrozenSentencesTest.line("06-last-lantern-home"));

    @Test
    void nearlyAllContradictionsAreFoundAndNothingElseIsFlagged() {
        List<String> missed = new ArrayList<>();
        List<String> alarms = new ArrayList<>();
        int wrong = 0;
        for (String row :
                FrozenSentencesTest.text("other-voices.tsv").lines().skip(1).toList()) {
            String[] cells = row.split("\t");
            boolean flagged = !Proofreading.of(cells[3], LINES.get(cells[1]), Locale.ENGLISH)
                    .contradictions()
                    .isEmpty();
            boolean isWrong = cells[2].equals("contradicts");
            wrong += isWrong ? 1 : 0;
            if (flagged != isWrong) {
                (isWrong ? missed : alarms).add(row);
            }
        }
        missed.forEach(row -> System.out.println("missed " + row));
        alarms.forEach(row -> System.out.println("false alarm " + row));
        System.out.println("found " + (wrong - missed.size()) + " of " + wrong + ", false alarms " + alarms.size());
        assertTrue(missed.size() * 20 <= wrong, missed.toString());
        assertTrue(alarms.isEmpty(), alarms.toString());
    }
}
