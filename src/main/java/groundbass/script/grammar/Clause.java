package groundbass.script.grammar;

import java.util.List;

/** Units that belong together, in the order in which they were said. */
public record Clause(List<Read> units) {
    public Clause {
        units = List.copyOf(units);
    }

    public int from() {
        return units.get(0).from();
    }

    public int to() {
        return units.get(units.size() - 1).to();
    }

    public boolean has(Unit.Tie tie) {
        return units.stream().anyMatch(read -> read.is(tie));
    }

    public boolean has(Class<? extends Unit> kind) {
        return units.stream().anyMatch(read -> read.is(kind));
    }

    /** Whether it asks: it ends so, and its verb comes first. "You slap that, right?" says something. */
    public boolean isQuestion() {
        boolean verb = units.stream()
                .filter(read -> !read.is(Unit.Tie.AND) && !read.is(Unit.Tie.SO) && !read.is(Unit.Tie.BUT))
                .findFirst()
                .filter(read -> read.is(Unit.Tie.BE) || read.is(Unit.Tie.HAVE) || read.is(Unit.Unknown.class))
                .isPresent();
        return has(Unit.Tie.ASK) && verb;
    }

    /** Whether every word was known. */
    public boolean isKnown() {
        return !has(Unit.Unknown.class);
    }
}
