package groundbass.script.rounds;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.script.rounds.Round.Answered;
import groundbass.script.rounds.Round.Row;
import java.util.List;
import java.util.Locale;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** Marks and capitals are a help and no need: the rounds that were learned from, as a machine would caption them, without any. */
class UnmarkedTalkTest {
    private static final int ROUNDS = 29;

    @Test
    void withoutMarksTwoOfThreeWrongStatementsAreStillFound() {
        var answers = IntStream.rangeClosed(1, ROUNDS)
                .mapToObj(Round::read)
                .map(UnmarkedTalkTest::unmarked)
                .flatMap(round -> round.answers().stream())
                .toList();
        var figures = Figures.of(answers);
        System.out.println("without marks: " + figures);
        assertThat(figures.found() * 100).isGreaterThanOrEqualTo(65 * figures.wrong());
        assertThat(figures.alarms() * 100).as(alarms(answers)).isLessThanOrEqualTo(3 * figures.others());
        assertThat(figures.praised()).isLessThanOrEqualTo(2);
    }

    private static String alarms(List<Answered> answers) {
        return answers.stream()
                .filter(answered -> answered.answer() == Round.Answer.CONTRADICTS)
                .filter(answered -> answered.row().label() != Round.Label.CONTRADICTS)
                .map(answered -> answered.row().statement())
                .toList()
                .toString();
    }

    private static Round unmarked(Round round) {
        var rows = round.rows().stream()
                .map(row -> new Row(row.label(), row.kind(), unmarked(row.statement(), round.language()), row.right()))
                .toList();
        return new Round(round.number(), round.line(), round.language(), rows);
    }

    private static String unmarked(String statement, Locale language) {
        return statement
                .toLowerCase(language)
                .replaceAll("[^\\p{L}\\p{N}'’ #♯♭/-]", " ")
                .replaceAll("(?<=\\s)['’-]|['’-](?=\\s)", " ")
                .replaceAll("\\s+", " ")
                .strip();
    }
}
