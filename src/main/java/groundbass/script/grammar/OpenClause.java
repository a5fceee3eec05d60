package groundbass.script.grammar;

import groundbass.script.grammar.Constituent.Tie;
import java.util.List;
import java.util.Set;

/** What was taken so far of a clause that is not closed yet, and whether it is one already. */
final class OpenClause {
    /** Words that something has to follow. */
    private static final Set<Tie> DANGLING = Set.of(
            Tie.BE,
            Tie.HAVE,
            Tie.PLAY,
            Tie.START,
            Tie.HOLD,
            Tie.CHANGE,
            Tie.ON,
            Tie.IN,
            Tie.OF,
            Tie.AT,
            Tie.TO,
            Tie.FROM,
            Tie.OVER,
            Tie.WITH,
            Tie.FOR,
            Tie.WE,
            Tie.IT,
            Tie.THE,
            Tie.WHICH,
            Tie.MAYBE,
            Tie.DO,
            Tie.OTHER,
            Tie.BETWEEN,
            Tie.EACH);

    private final List<Read> units;
    private final List<Read> open;
    private final Openings openings;

    /** @param open what was taken of all units; it may change while it is looked at */
    OpenClause(List<Read> units, List<Read> open, Openings openings) {
        this.units = units;
        this.open = open;
        this.openings = openings;
    }

    boolean isStrange() {
        return open.size() > 1 && open.stream().anyMatch(read -> read.is(Constituent.Unknown.class));
    }

    /** "..., the A and the G are sixteenths": what stands since the comma belongs to what comes; taken out. */
    List<Read> subjectList() {
        int comma = -1;
        for (int i = 0; i < open.size(); i++) {
            boolean fact = i > 0 && open.get(i).is(Tie.THAT) && open.get(i - 1).is(Constituent.Unknown.class);
            comma = open.get(i).is(Tie.COMMA) || fact ? i : comma;
        }
        boolean list =
                comma > 0 && Units.hasVerb(open.subList(0, comma)) && !Units.hasVerb(open.subList(comma, open.size()));
        if (!list) {
            return List.of();
        }
        var tail = List.copyOf(open.subList(comma, open.size()));
        open.subList(comma, open.size()).clear();
        return tail;
    }

    /** Whether enough was said for a clause: a verb with something behind it, or something and the moment where it comes. */
    boolean isComplete(int i) {
        var last = open.get(open.size() - 1);
        boolean object = (last.is(Tie.IT) || last.is(Tie.WE))
                && open.size() > 1
                && Units.isBeforeNoun(open.get(open.size() - 2)); // "in it"
        var led = open.get(Math.max(0, open.size() - 2));
        boolean edge = last.is(Tie.START) && (led.is(Tie.FROM) || led.is(Tie.AT)); // "the E from the beginning"
        boolean parted = edge
                || last.is(Tie.START) // "fängt ... an"
                        && open.stream().filter(read -> read.is(Tie.START)).count() > 1;
        boolean stranded = units.get(i).is(Tie.FROM) && last.is(Tie.ON); // "the one we started on"
        boolean dangling = last.unit() instanceof Constituent.Small small
                && DANGLING.contains(small.tie())
                && !object
                && !parted
                && !stranded;
        boolean again = last.is(Tie.AGAIN)
                && !Units.isBeat(units.get(i))
                && open.size() > 1
                && open.get(open.size() - 2).is(Tie.SAME);
        boolean compared = last.is(Tie.SAME) || last.is(Tie.LIKE) || again;
        boolean noun = open.stream()
                .filter(read -> !Units.isSeparator(read))
                .findFirst()
                .filter(read -> read.is(Tie.THE) || read.is(Tie.THAT))
                .filter(read -> open.stream().noneMatch(other -> other.is(Tie.THEN))) // "the D and then the B on two"
                .isPresent();
        var first = open.stream()
                .filter(read -> !Units.isSeparator(read))
                .findFirst()
                .orElse(open.get(0));
        boolean order = first.unit() instanceof Constituent.Played;
        boolean each = (first.is(Tie.ALL) || first.is(Tie.BOTH)) && isThing();
        boolean listed = (openings.isPointing(i) || openings.isAsking(i) || openings.isSubject(i))
                && isThing()
                && !noun; // "then B flat and D it's ..."
        boolean to = open.stream().anyMatch(read -> read.is(Tie.TO));
        boolean toward = first.is(Tie.FROM) || first.is(Tie.OF) && to || Units.isContent(first) && to;
        boolean path = toward && !Units.hasVerb(open) && !order; // "from the C up to the E that's ..."
        boolean told = (Units.hasVerb(open) || order)
                && (open.size() > 2 || open.stream().anyMatch(read -> Units.isContent(read) || Units.isMoment(read)));
        return !dangling
                && !compared
                && !path
                && (told || each || listed || isUnknownSaid() || !noun && Units.isPlaced(open));
    }

    boolean isThing() {
        return open.stream()
                .anyMatch(read -> Units.isContent(read) && !Units.isMoment(read) && !read.is(Constituent.Number.class));
    }

    /** "It smiles at you": a verb that is not known. */
    boolean isUnknownSaid() {
        return open.stream().anyMatch(read -> read.is(Constituent.Unknown.class))
                && open.stream().anyMatch(read -> read.is(Tie.WE) || read.is(Tie.IT) || read.is(Tie.THEY));
    }
}
