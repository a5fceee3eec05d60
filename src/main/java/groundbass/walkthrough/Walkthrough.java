package groundbass.walkthrough;

import groundbass.score.Fraction;
import groundbass.score.Line;
import groundbass.score.Passage;
import groundbass.score.Position;
import groundbass.text.Messages;
import groundbass.writing.Writing;
import groundbass.writing.WrittenLine;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import java.util.stream.Collectors;

/**
 * A line told step by step. First comes one step about the whole line, then for each bar what its signs say and one
 * step a beat; beats in which nothing begins are told together, and a bar that repeats an earlier one is not told again.
 * Every note is told exactly once, in the bar that it begins in.
 */
public final class Walkthrough {
    private final Line line;
    private final WrittenLine written;
    private final Vocabulary words;
    private final EarlierBars earlier;

    private Walkthrough(Line line, Messages messages) {
        this.line = line;
        this.written = Writing.of(line);
        this.words = new Vocabulary(messages);
        this.earlier = new EarlierBars(line);
    }

    /** The steps in the order in which they are read, in the language of {@code messages}. */
    public static List<Step> of(Line line, Messages messages) {
        return new Walkthrough(line, messages).steps();
    }

    /** What stands in place of a picture of a passage: the bars that it shows, told. */
    public static Function<Passage, String> alternatives(Line line, Messages messages) {
        var walkthrough = new Walkthrough(line, messages);
        var told = walkthrough.steps();
        return passage -> walkthrough.alternative(told.subList(1, told.size()), passage);
    }

    private List<Step> steps() {
        var steps = new ArrayList<Step>();
        steps.add(new Step(whole(), new OpeningWords(words, line).text()));
        var signs = new SignWords(words, line);
        for (int i = 0; i < line.bars().size(); i++) {
            var passage = Passage.bar(i + line.firstNumber());
            signs.before(i).forEach(text -> steps.add(new Step(passage, text)));
            steps.addAll(bar(i));
            signs.after(i).ifPresent(text -> steps.add(new Step(passage, text)));
        }
        return List.copyOf(steps);
    }

    private List<Step> bar(int index) {
        var telling =
                new BarTelling(words, line.header().tuning(), written.bars().get(index));
        return earlier.sameAs(index)
                .map(number -> List.of(telling.sameAs(number)))
                .orElseGet(telling::beats);
    }

    private Passage whole() {
        int first = line.firstNumber();
        return new Passage(
                new Position(first, Fraction.ZERO),
                new Position(first + line.bars().size(), Fraction.ZERO));
    }

    private String alternative(List<Step> told, Passage passage) {
        String sentences = told.stream()
                .filter(step -> passage.contains(step.passage().from()))
                .map(Step::text)
                .collect(Collectors.joining(" "));
        return words.say("alternative", bars(passage), sentences);
    }

    private String bars(Passage passage) {
        int first = passage.from().bar();
        var to = passage.to();
        int last = to.at().isZero() ? to.bar() - 1 : to.bar();
        return first == last
                ? words.say("alternative.bar", String.valueOf(first))
                : words.say("alternative.bars", String.valueOf(first), String.valueOf(last));
    }
}
