package groundbass.walkthrough;

import groundbass.score.Fraction;
import groundbass.score.Line;
import groundbass.score.Passage;
import groundbass.score.Position;
import groundbass.text.Messages;
import groundbass.walkthrough.words.Naming;
import groundbass.walkthrough.words.OpeningWords;
import groundbass.walkthrough.words.SignWords;
import groundbass.walkthrough.words.StepText;
import groundbass.walkthrough.words.Told;
import groundbass.walkthrough.words.Wording;
import groundbass.writing.Writing;
import groundbass.writing.WrittenLine;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.IntStream;

/**
 * A line told step by step. First and last come steps about the whole line, how it is made and how it is practised;
 * between them for each bar what its signs say and one
 * step a beat; equal beats are told together, so are those in which nothing begins, and a bar, or beats of a bar, that
 * repeat an earlier one, here or elsewhere on the neck, are told by it. Told in brief, each bar is one step. Every note is
 * told exactly once, in the bar that it begins in.
 */
public final class Walkthrough {
    private final Line line;
    private final WrittenLine written;
    private final Wording words;
    private final Telling telling;
    private final EarlierBars earlier;
    private final Leanings leanings;
    private final Depth depth;
    private final List<Told> told = new ArrayList<>();

    /** Whether each step is read by itself, or after those before it, so that what holds for several is told once. */
    enum Reading {
        ALONE,
        IN_TURN
    }

    private Walkthrough(Line line, Wording words, Depth depth, Reading reading) {
        this.line = line;
        this.depth = depth;
        this.written = Writing.of(line);
        this.words = words;
        this.earlier = new EarlierBars(line);
        this.leanings = new Leanings(line, written, earlier);
        this.telling = Telling.of(
                line,
                words,
                depth == Depth.BRIEF ? HandPositions.NONE : new HandPositions(line, earlier, leanings),
                reading == Reading.ALONE ? UsualRhythm.NONE : UsualRhythm.of(written, words),
                reading);
    }

    /** The steps in the order in which they are read, in the language of {@code messages} with its usual names. */
    public static List<Step> of(Line line, Messages messages) {
        return of(line, messages, Naming.USUAL);
    }

    /** The steps in the order in which they are read, in the language of {@code messages}. */
    public static List<Step> of(Line line, Messages messages, Naming naming) {
        return of(line, messages, naming, Depth.FULL);
    }

    /** The same, as much of it as is asked for. */
    public static List<Step> of(Line line, Messages messages, Naming naming, Depth depth) {
        var reading = depth == Depth.FULL ? Reading.IN_TURN : Reading.ALONE;
        return new Walkthrough(line, new Wording(messages, naming, false), depth, reading).steps();
    }

    /** What stands in place of a picture of a passage: the bars that it shows, told. */
    public static Function<Passage, String> alternatives(Line line, Messages messages) {
        // a piece is read without the beginning, so that each of its beats says all of itself
        var words = new Wording(messages, Naming.USUAL);
        var steps = new Walkthrough(line, words, Depth.FULL, Reading.ALONE).steps();
        var bars = steps.subList(1, steps.size() - 1);
        return passage -> alternative(bars, passage, words);
    }

    private List<Step> steps() {
        bars();
        told.add(closing());
        return anchored();
    }

    private void bars() {
        told.add(new Told(whole(), ToldSubject.OPENING, opening()));
        var signs = new SignWords(words, line);
        int next = 0;
        while (next < line.bars().size()) {
            int first = next;
            signs.before(first).forEach(sign -> told.add(sign.told(first, line)));
            int last = lastTold(first, signs);
            signs.after(last).forEach(sign -> told.add(back(sign.told(last, line), last, signs)));
            next = last + 1;
        }
    }

    /** A sign that leads back, with where the hand goes for it. */
    private Told back(Told sign, int bar, SignWords signs) {
        boolean leads = line.bars().get(bar).repeats().end().isPresent();
        return leads
                ? telling.hand()
                        .back(bar, signs.returnFrom(bar), words)
                        .map(sign::and)
                        .orElse(sign)
                : sign;
    }

    private String opening() {
        String facts = new OpeningWords(words, line).text();
        String rhythm = telling.usual().said(words).map(usual -> " " + usual).orElse("");
        return facts + rhythm + " " + plan().begin();
    }

    /** What is said at the end, of all of it; a picture of some bars has none. */
    private Told closing() {
        int last = line.bars().size() - 1 + line.firstNumber();
        return new Told(Passage.bar(last), ToldSubject.CLOSING, plan().text());
    }

    private PracticePlan plan() {
        return new PracticePlan(words, line, telling.hard(), earlier);
    }

    /** Tells the bar of this index, and those after it that are told with it; the index of the last. */
    private int lastTold(int first, SignWords signs) {
        var before = earlier.of(first);
        if (before.isEmpty()) {
            told.addAll(
                    depth == Depth.BRIEF
                            ? List.of(telling(first).brief())
                            : telling(first).beats());
            return first;
        }
        int last = first;
        while (last + 1 < line.bars().size() && goesOn(first, last + 1, signs)) {
            last++;
        }
        told.add(last == first ? telling(first).by(before.get()) : together(first, last, before.get()));
        return last;
    }

    /** Whether the bar of an index follows an earlier one as the bars before it do, with nothing to say in between. */
    private boolean goesOn(int first, int index, SignWords signs) {
        return isPlainReference(first)
                && isPlainReference(index)
                && earlier.of(index).equals(earlier.of(first).map(start -> start.later(index - first)))
                && !telling.hand().isNews(index)
                && signs.after(index - 1).isEmpty()
                && signs.before(index).isEmpty();
    }

    /** Whether chords and words above a bar are those of the bar that it refers to. */
    private boolean isPlainReference(int index) {
        var bar = line.bars().get(index);
        return earlier.of(index)
                .map(reference -> line.bar(reference.number()))
                .filter(source -> source.chords().equals(bar.chords()))
                .filter(source -> source.directions().equals(bar.directions()))
                .isPresent();
    }

    private Told together(int first, int last, Earlier reference) {
        int number = first + line.firstNumber();
        int lastNumber = last + line.firstNumber();
        var passage = new Passage(new Position(number, Fraction.ZERO), new Position(lastNumber + 1, Fraction.ZERO));
        String subject = IntStream.rangeClosed(first, last)
                .mapToObj(i -> telling(i).by(reference).subject())
                .collect(Collectors.joining(" || "));
        return new Told(passage, subject, togetherText(first, last, reference));
    }

    private String togetherText(int first, int last, Earlier reference) {
        var earlierWords = new EarlierWords(words);
        var where = new ArrayList<String>();
        where.add(earlierWords.name(first + line.firstNumber(), last + line.firstNumber()));
        String told = earlierWords.many(last - first + 1, reference);
        return StepText.plain(where, telling.hand().before(first, told, words)).said(words);
    }

    private BarTelling telling(int index) {
        return new BarTelling(telling, index, written.bars().get(index), leanings.of(index));
    }

    private List<Step> anchored() {
        var digests = told.stream().map(Told::subject).map(Anchor::digest).toList();
        return IntStream.range(0, told.size())
                .mapToObj(i -> new Step(
                        told.get(i).passage(),
                        new Anchor(
                                digests.get(i),
                                i == 0 ? "" : digests.get(i - 1),
                                i + 1 == digests.size() ? "" : digests.get(i + 1)),
                        told.get(i).text()))
                .toList();
    }

    private Passage whole() {
        int first = line.firstNumber();
        return new Passage(
                new Position(first, Fraction.ZERO),
                new Position(first + line.bars().size(), Fraction.ZERO));
    }

    private static String alternative(List<Step> steps, Passage passage, Wording words) {
        String sentences = steps.stream()
                .filter(step -> step.passage().overlaps(passage))
                .map(Step::text)
                .collect(Collectors.joining(" "));
        return words.say("alternative", bars(passage, words), sentences);
    }

    private static String bars(Passage passage, Wording words) {
        int first = passage.from().bar();
        var to = passage.to();
        int last = to.at().isZero() ? to.bar() - 1 : to.bar();
        if (last == 0) {
            return words.say("alternative.pickup");
        }
        if (first == 0) {
            return words.say("alternative.with", bars(1, last, words));
        }
        return bars(first, last, words);
    }

    private static String bars(int first, int last, Wording words) {
        return first == last
                ? words.say("alternative.bar", String.valueOf(first))
                : words.say("alternative.bars", String.valueOf(first), String.valueOf(last));
    }
}
