package groundbass.script.thread.talk;

import groundbass.score.Line;
import groundbass.script.grammar.Clause;
import groundbass.script.grammar.Constituent;
import groundbass.script.grammar.Constituent.Tie;
import groundbass.script.grammar.Read;
import groundbass.script.grammar.TalkHearing;
import groundbass.script.words.Lexicon;
import groundbass.script.words.Sense;
import groundbass.script.words.Terms;
import groundbass.script.words.Word;
import groundbass.script.words.Words;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;

/**
 * Follows what part of a line a speaker turns to, phrase by phrase. A bar is turned to where a phrase opens with it; of
 * all that open so, those are meant that rise through the line and are stayed with longest, so that a look ahead or back
 * in passing is no turn.
 */
public final class Turns {
    /** After such words a bar is one that something is compared with, or one that is not meant. */
    private static final Set<Tie> TURNED_AWAY = Set.of(
            Tie.SAME, Tie.LIKE, Tie.DIFFERENT, Tie.NOT, Tie.NO, Tie.MAYBE, Tie.EXCEPT, Tie.BEFORE, Tie.OTHER, Tie.ASK);

    private static final Set<Class<? extends Constituent>> LEADING = Set.of(
            Constituent.Beats.class,
            Constituent.LastBeats.class,
            Constituent.Parts.class,
            Constituent.HalfBar.class,
            Constituent.Rank.class,
            Constituent.Unknown.class);

    private final Line line;
    private final int lastBar;
    private final TalkHearing hearing;
    private final Lexicon lexicon;
    private final List<Opened> opened = new ArrayList<>();
    private final List<ToWhole> wholes = new ArrayList<>();

    private Turns(String spoken, Line line, Locale language) {
        this.line = line;
        this.lastBar = line.firstNumber() + line.bars().size() - 1;
        this.hearing = TalkHearing.of(spoken, line.header().title(), language);
        this.lexicon = Lexicon.of(language);
    }

    /** Each begins with a phrase: the offset of its first character. */
    public sealed interface Turn {
        int from();
    }

    /** To bars that were not turned to before. */
    public record ToBars(int from, int first, int last) implements Turn {}

    /** To the line as a whole. */
    public record ToWhole(int from, How how) implements Turn {}

    public enum How {
        SLOWLY,
        FULL,
        WHOLE
    }

    /** A phrase that opens with bars. */
    private record Opened(int from, int first, int last) {}

    /** In the order in which they are spoken; time is linear in the script's length. */
    public static List<Turn> of(String spoken, Line line, Locale language) {
        var turns = new Turns(spoken, line, language);
        Words.sentences(spoken).forEach(turns::hear);
        return turns.inOrder(spoken.length());
    }

    private void hear(List<Word> sentence) {
        var clauses = hearing.clauses(sentence);
        int word = 0;
        for (int i = 0; i < clauses.size(); i++) {
            int end = i + 1 < clauses.size() ? after(sentence, clauses.get(i).to()) : sentence.size();
            if (end > word) {
                phrase(clauses.get(i), sentence.subList(word, end));
            }
            word = Math.max(word, end);
        }
    }

    /** Index of the first word after an offset: with it the next phrase begins, whatever little words it opens with. */
    private static int after(List<Word> sentence, int offset) {
        int at = 0;
        while (at < sentence.size() && sentence.get(at).from() < offset) {
            at++;
        }
        return at;
    }

    private void phrase(Clause clause, List<Word> words) {
        var turn = bars(clause, words.get(0).from());
        if (turn.isEmpty()) {
            whole(new Terms(lexicon.terms(words)))
                    .ifPresent(how -> wholes.add(new ToWhole(words.get(0).from(), how)));
            return;
        }
        boolean stays = !opened.isEmpty()
                && opened.get(opened.size() - 1).first() == turn.get().first();
        if (!stays) {
            opened.add(turn.get());
        }
    }

    private Optional<Opened> bars(Clause clause, int from) {
        for (Read read : clause.units()) {
            var numbers = numbers(read.unit());
            if (!numbers.isEmpty()) {
                int first = numbers.get(0);
                int end = numbers.get(numbers.size() - 1);
                int last = end - first == numbers.size() - 1 ? end : first; // "bars one and five" turns to one
                return first >= line.firstNumber() && last <= lastBar
                        ? Optional.of(new Opened(from, first, last))
                        : Optional.empty();
            }
            if (!leads(read.unit())) {
                return Optional.empty();
            }
        }
        return Optional.empty();
    }

    private List<Integer> numbers(Constituent unit) {
        if (unit instanceof Constituent.Bars bars) {
            return bars.numbers();
        }
        if (unit instanceof Constituent.BarsAtEdge edge) {
            int first = edge.last() ? lastBar - edge.many() + 1 : Math.max(1, line.firstNumber());
            return IntStream.range(first, first + edge.many()).boxed().toList();
        }
        if (!(unit instanceof Constituent.BarAt at)) {
            return List.of();
        }
        return switch (at.way()) {
            case FIRST -> List.of(line.firstNumber());
            case PENULTIMATE -> List.of(lastBar - 1);
            case LAST -> List.of(lastBar);
            case NEXT ->
                opened.isEmpty()
                        ? List.of()
                        : List.of(opened.get(opened.size() - 1).last() + 1);
            case THIS, EACH -> List.of();
        };
    }

    private static boolean leads(Constituent unit) {
        return unit instanceof Constituent.Small small
                ? !TURNED_AWAY.contains(small.tie())
                : LEADING.contains(unit.getClass());
    }

    /** Plans such as "I'll play the whole line later" are no turn. */
    private static Optional<How> whole(Terms terms) {
        if (terms.has(Sense.NOT)) {
            return Optional.empty();
        }
        if (terms.has(Sense.FULL_SPEED)) {
            return Optional.of(How.FULL);
        }
        boolean slowly = terms.has(Sense.SLOWLY);
        boolean planned = terms.has(Sense.PRONOUN) || terms.has(Sense.THAT);
        return terms.has(Sense.THE_WHOLE) && (slowly || !planned)
                ? Optional.of(slowly ? How.SLOWLY : How.WHOLE)
                : Optional.empty();
    }

    private List<Turn> inOrder(int end) {
        var turns = new ArrayList<Turn>(rising(end));
        if (!turns.isEmpty()) {
            int begun = turns.get(0).from();
            wholes.stream().filter(whole -> whole.from() > begun).forEach(turns::add);
        }
        turns.sort(Comparator.comparingInt(Turn::from));
        return turns;
    }

    /** A way through the line. */
    private record Way(List<ToBars> turns, long stayed) {
        private static final Way NONE = new Way(List.of(), 0);

        Way with(Opened next, long stay) {
            var more = new ArrayList<>(turns);
            more.add(new ToBars(next.from(), next.first(), next.last()));
            return new Way(more, stayed + stay);
        }
    }

    /** Of all ways that rise through the line, the one on which most is said; of no bar more counts than its share. */
    private List<ToBars> rising(int end) {
        long share = Math.max(1, end / line.bars().size());
        var best = new Way[line.bars().size() + 1]; // up to which bar
        Arrays.fill(best, Way.NONE);
        for (int i = 0; i < opened.size(); i++) {
            var next = opened.get(i);
            int until = i + 1 < opened.size() ? opened.get(i + 1).from() : end;
            var way = best[next.first() - line.firstNumber()].with(next, Math.min(share, until - next.from()));
            for (int bar = next.last() - line.firstNumber() + 1; bar < best.length; bar++) {
                best[bar] = way.stayed() > best[bar].stayed() ? way : best[bar];
            }
        }
        return best[best.length - 1].turns();
    }
}
