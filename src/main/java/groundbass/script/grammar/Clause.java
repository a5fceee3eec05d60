package groundbass.script.grammar;

import java.util.List;
import java.util.Optional;

/** Units that belong together, in the order in which they were said. */
public record Clause(List<Read> units) {
    private static final List<Constituent.Tie> VERBS = List.of(
            Constituent.Tie.BE,
            Constituent.Tie.HAVE,
            Constituent.Tie.PLAY,
            Constituent.Tie.START,
            Constituent.Tie.END,
            Constituent.Tie.HOLD,
            Constituent.Tie.WE);

    /** Words that lead to something which was not understood. */
    private static final List<Constituent.Tie> LEADING = List.of(Constituent.Tie.COMMA, Constituent.Tie.IN);

    public Clause {
        units = List.copyOf(units);
    }

    public int from() {
        return units.get(0).from();
    }

    public int to() {
        return units.get(units.size() - 1).to();
    }

    public boolean has(Constituent.Tie tie) {
        return units.stream().anyMatch(read -> read.is(tie));
    }

    public boolean has(Class<? extends Constituent> kind) {
        return units.stream().anyMatch(read -> read.is(kind));
    }

    /** The last word that is known. */
    public Optional<Read> lastKnown() {
        return units.stream()
                .filter(read -> !read.is(Constituent.Unknown.class))
                .reduce((one, two) -> two);
    }

    /** The first word that is known; a clause may begin with what belongs to none. */
    public Optional<Read> firstKnown() {
        return units.stream()
                .filter(read -> !read.is(Constituent.Unknown.class))
                .findFirst();
    }

    /** Where this very unit stands. */
    public Optional<Read> find(Constituent unit) {
        return units.stream().filter(read -> read.unit() == unit).findFirst();
    }

    /** Whether it asks: it ends so, and its verb or a word that asks comes first. "You slap that, right?" says something. */
    public boolean isQuestion() {
        boolean verb = units.stream()
                .filter(read ->
                        !read.is(Constituent.Tie.AND) && !read.is(Constituent.Tie.SO) && !read.is(Constituent.Tie.BUT))
                .findFirst()
                .filter(read -> read.is(Constituent.Tie.DO)
                        || read.is(Constituent.Tie.BE)
                        || read.is(Constituent.Tie.HAVE)
                        || read.is(Constituent.Unknown.class))
                .isPresent();
        boolean asking = has(Constituent.Tie.WHAT) || has(Constituent.Tie.HOW_MANY) || has(Constituent.Tie.WHICH);
        boolean fragment =
                units.stream().noneMatch(read -> VERBS.stream().anyMatch(read::is)); // "And dead notes in that bar?"
        return has(Constituent.Tie.ASK) && (verb || asking || fragment && units.size() > 1);
    }

    /** Without the words that are not known or say nothing; empty where none is left. */
    public Optional<Clause> core() {
        var known = units.stream()
                .map(Clause::paused)
                .filter(read -> !read.is(Constituent.Unknown.class)
                        && !read.is(Constituent.Tie.WHAT)
                        && !read.is(Constituent.Tie.YES))
                .toList();
        int end = known.size();
        while (end > 0 && LEADING.stream().anyMatch(known.get(end - 1)::is)) { // "with an accent, dig in"
            end--;
        }
        return end == 0 ? Optional.empty() : Optional.of(new Clause(known.subList(0, end)));
    }

    /** What stands before a colon and what stands behind it are two things. */
    private static Read paused(Read read) {
        boolean pause = read.unit() instanceof Constituent.Unknown unknown && unknown.pause();
        return pause ? new Read(new Constituent.Small(Constituent.Tie.COMMA), read.from(), read.to()) : read;
    }

    /** The same without a word that only affirms; "what you play on three is a C" says no more than without its "what". */
    public Clause plain() {
        boolean cleft = units.get(0).is(Constituent.Tie.WHAT)
                && has(Constituent.Tie.WE)
                && has(Constituent.Tie.BE)
                && !has(Constituent.Tie.ASK);
        var rest = units.stream()
                .filter(read -> !read.is(Constituent.Tie.YES))
                .filter(read -> !cleft || read != units.get(0))
                .toList();
        return rest.isEmpty() ? this : new Clause(rest);
    }

    /** Whether every word was known. */
    public boolean isKnown() {
        return !has(Constituent.Unknown.class) && !has(Constituent.Tie.WHAT);
    }
}
