package groundbass.script.rounds;

import groundbass.script.rounds.Round.Answer;
import groundbass.script.rounds.Round.Answered;
import groundbass.script.rounds.Round.Label;
import java.util.List;

/**
 * What a round came to.
 *
 * @param found wrong statements that were contradicted
 * @param praised wrong statements that were told "agrees"
 * @param alarms true or open statements that were contradicted
 * @param recognised true statements that were told "agrees"
 */
record Figures(int found, int wrong, int praised, int alarms, int others, int recognised, int right) {
    static Figures of(List<Answered> answers) {
        return new Figures(
                count(answers, Label.CONTRADICTS, Answer.CONTRADICTS),
                count(answers, Label.CONTRADICTS),
                count(answers, Label.CONTRADICTS, Answer.AGREES),
                count(answers, Label.AGREES, Answer.CONTRADICTS)
                        + count(answers, Label.CANNOT_TELL, Answer.CONTRADICTS),
                count(answers, Label.AGREES) + count(answers, Label.CANNOT_TELL),
                count(answers, Label.AGREES, Answer.AGREES),
                count(answers, Label.AGREES));
    }

    static String of(int round, List<Answered> answers) {
        return "round " + round + ": " + of(answers);
    }

    private static int count(List<Answered> answers, Label label) {
        return (int) answers.stream()
                .filter(answered -> answered.row().label() == label)
                .count();
    }

    private static int count(List<Answered> answers, Label label, Answer answer) {
        return (int) answers.stream()
                .filter(answered -> answered.row().label() == label && answered.answer() == answer)
                .count();
    }

    @Override
    public String toString() {
        return "found " + found + " of " + wrong + ", wrong told \"agrees\" " + praised + ", false alarms " + alarms
                + " of " + others + ", true recognised " + recognised + " of " + right;
    }
}
