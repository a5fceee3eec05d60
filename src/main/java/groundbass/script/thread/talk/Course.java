package groundbass.script.thread.talk;

import groundbass.script.grammar.Clause;
import groundbass.script.grammar.Constituent;
import groundbass.script.grammar.Constituent.Tie;
import groundbass.script.thread.stage.Memory;
import groundbass.script.thread.whole.Asking;
import java.util.Optional;
import java.util.Set;
import java.util.stream.IntStream;

/**
 * How far a talk has come.
 *
 * @param memory what was spoken of last
 * @param denied whether the clause before said what is not so
 * @param begun whether anything was said of notes yet, and not of chords and bars alone
 * @param slowly for so many clauses a tempo may be one to practise at
 * @param takenBack whether the sentence has taken back what it said first: where it goes on is an aside
 * @param before the clause before, in the same sentence
 * @param last what was said last of the line, in this sentence or before it
 * @param question what was asked just now
 */
record Course(
        Memory memory,
        boolean denied,
        boolean begun,
        int slowly,
        boolean takenBack,
        Optional<Clause> before,
        Optional<Clause> last,
        Optional<Asking> question) {
    static final Course START =
            new Course(Memory.NOTHING, false, false, 0, false, Optional.empty(), Optional.empty(), Optional.empty());

    private static final int PRACTICE = 3;

    private static final Set<Class<? extends Constituent>> OF_NOTES = Set.of(
            Constituent.Name.class,
            Constituent.Place.class,
            Constituent.Value.class,
            Constituent.Played.class,
            Constituent.Dead.class,
            Constituent.Triplet.class,
            Constituent.Silence.class,
            Constituent.Beats.class);

    /** @param marked whether somebody wrote where the sentence before ended */
    Course atSentence(boolean marked) {
        return new Course(memory, denied, begun, slowly, false, marked ? Optional.empty() : before, last, question);
    }

    Course takingBack() {
        return new Course(memory, denied, begun, slowly, true, before, last, question);
    }

    Course with(Memory other) {
        return new Course(other, denied, begun, slowly, takenBack, before, last, question);
    }

    /** With a clause that is being heard, as it is meant. */
    Course hearing(Clause clause) {
        boolean notes = clause.units().stream()
                .anyMatch(read -> OF_NOTES.contains(read.unit().getClass()));
        return new Course(
                memory, clause.has(Tie.NOT), begun || notes, slower(clause), takenBack, before, last, question);
    }

    /** Whether a tempo in this clause may be one to practise at. */
    boolean isSlow(Clause clause) {
        return slower(clause) > 0;
    }

    private int slower(Clause clause) {
        return IntStream.range(0, clause.units().size()).anyMatch(i -> isSlow(clause, i)) ? PRACTICE : slowly - 1;
    }

    /** "If the bus is slow" speaks of something else. */
    private static boolean isSlow(Clause clause, int i) {
        boolean other = i > 1
                && clause.units().get(i - 1).is(Tie.BE)
                && clause.units().get(i - 2).is(Constituent.Unknown.class);
        return clause.units().get(i).is(Tie.SLOW) && !other;
    }

    /** After a clause, as it was said. */
    Course after(Clause said, boolean musical, Optional<Asking> asked) {
        return new Course(
                memory, denied, begun, slowly, takenBack, Optional.of(said), musical ? Optional.of(said) : last, asked);
    }

    /** Whether it was just said of how many bars the line is. */
    boolean isOverview() {
        return before.filter(earlier -> earlier.has(Constituent.BarCount.class)).isPresent();
    }

    boolean isAmountAsked() {
        return question.filter(asked -> asked.asked().has(Tie.HOW_MANY)).isPresent();
    }
}
