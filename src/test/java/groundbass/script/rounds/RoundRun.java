package groundbass.script.rounds;

import groundbass.script.RightWords;
import groundbass.script.checking.Verdict;
import groundbass.script.rounds.Round.Answer;
import groundbass.script.rounds.Round.Answered;
import groundbass.script.rounds.Round.Label;
import groundbass.text.Messages;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/**
 * Runs rounds of statements through the proofreader and prints its figures by kind: {@code RoundRun [-v] 1 2 3}, or
 * a folder with a line.txt and a talk.tsv instead of a number. With {@code -v} each row that was not answered as labelled
 * is printed too.
 */
public final class RoundRun {
    private final boolean rows;

    private RoundRun(boolean rows) {
        this.rows = rows;
    }

    public static void main(String[] args) {
        var run = new RoundRun(Arrays.asList(args).contains("-v"));
        Arrays.stream(args)
                .filter(arg -> !arg.equals("-v"))
                .map(RoundRun::round)
                .forEach(run::run);
    }

    private static Round round(String name) {
        boolean frozen = name.matches("\\d+");
        return frozen
                ? Round.read(Integer.parseInt(name))
                : Round.read(0, Path.of(name, "line.txt"), Path.of(name, "talk.tsv"));
    }

    private void run(Round round) {
        var answers = round.answers();
        System.out.println(Figures.of(round.number(), answers));
        kinds(answers);
        if (rows) {
            IntStream.range(0, answers.size()).forEach(i -> row(round, i + 1, answers.get(i)));
        }
    }

    private static void kinds(List<Answered> answers) {
        var kinds = answers.stream()
                .map(answered -> answered.row().kind())
                .distinct()
                .sorted()
                .toList();
        for (String kind : kinds) {
            var own = answers.stream()
                    .filter(answered -> answered.row().kind().equals(kind))
                    .toList();
            System.out.println("  " + kind + ": " + Figures.of(own));
        }
    }

    private static void row(Round round, int number, Answered answered) {
        boolean asLabelled =
                answered.answer().name().equals(answered.row().label().name());
        if (asLabelled) {
            return;
        }
        var words = new RightWords(
                Messages.of(round.language()), round.line().header().tuning());
        String said = answered.statements().stream()
                .map(statement -> statement.verdict() instanceof Verdict.Contradicts wrong
                        ? "not so: " + words.of(wrong.right())
                        : statement.verdict().getClass().getSimpleName())
                .collect(Collectors.joining("; "));
        boolean grave = answered.answer() == Answer.CONTRADICTS
                || (answered.answer() == Answer.AGREES && answered.row().label() == Label.CONTRADICTS);
        System.out.println(
                (grave ? "!! " : "   ") + number + " " + answered.row().label() + " but "
                        + answered.answer() + ": " + answered.row().statement() + "  [" + said + "] "
                        + answered.row().right());
    }
}
