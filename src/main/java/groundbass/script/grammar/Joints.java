package groundbass.script.grammar;

import groundbass.script.grammar.Constituent.Tie;
import java.util.List;
import java.util.Set;

/** Where one clause can end and another begin, if nothing but the units on both sides is looked at. */
final class Joints {
    /** Words that something has to follow, so that no clause ends with them. */
    private static final Set<Tie> LEADING = Set.of(
            Tie.ON,
            Tie.IN,
            Tie.OF,
            Tie.AT,
            Tie.TO,
            Tie.FROM,
            Tie.OVER,
            Tie.WITH,
            Tie.FOR,
            Tie.THE,
            Tie.EACH,
            Tie.BETWEEN,
            Tie.AND,
            Tie.BUT,
            Tie.SO,
            Tie.THEN,
            Tie.COMMA,
            Tie.COLON,
            Tie.SEMICOLON,
            Tie.STOP,
            Tie.WHICH,
            Tie.DO,
            Tie.LIKE,
            Tie.HIGH,
            Tie.LOW);

    /** Words with which a clause can begin. */
    private static final Set<Tie> OPENING = Set.of(
            Tie.AND,
            Tie.BUT,
            Tie.SO,
            Tie.THEN,
            Tie.YES,
            Tie.NO,
            Tie.WHAT,
            Tie.HOW_MANY,
            Tie.WHICH,
            Tie.IT,
            Tie.THAT,
            Tie.THEY,
            Tie.WE,
            Tie.THERE,
            Tie.THE,
            Tie.EACH,
            Tie.ALL,
            Tie.BOTH,
            Tie.ONLY,
            Tie.ON,
            Tie.IN,
            Tie.AT,
            Tie.FROM,
            Tie.AFTER,
            Tie.BEFORE,
            Tie.MAYBE,
            Tie.DO,
            Tie.TEMPO,
            Tie.METER,
            Tie.KEY,
            Tie.CHORD,
            Tie.RHYTHM,
            Tie.STOP,
            Tie.COLON,
            Tie.SEMICOLON,
            Tie.COMMA,
            Tie.NOT,
            Tie.PLAY,
            Tie.HOLD,
            Tie.HIGH,
            Tie.LOW,
            Tie.THUMB,
            Tie.SUM);

    private Joints() {}

    static boolean isAt(int i, List<Read> units) {
        var before = units.get(i - 1).unit();
        var unit = units.get(i).unit();
        boolean ended = !(before instanceof Constituent.Small small) || !LEADING.contains(small.tie());
        boolean opens = unit instanceof Constituent.Small small
                ? OPENING.contains(small.tie())
                : !(before instanceof Constituent.Count) && !(before instanceof Constituent.Rank);
        boolean answered = units.get(i - 1).is(Tie.NO) && unit instanceof Constituent.Small; // "no, it's"
        return ended && (opens || answered);
    }
}
