package groundbass.script.grammar;

import groundbass.script.grammar.Constituent.Tie;
import groundbass.script.lexicon.Category;
import groundbass.script.lexicon.SpokenWord;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** What a single word ties together, or does. */
final class Ties {
    /** Words that are units by themselves, in the order in which they are tried. */
    private static final Map<Category, Tie> TIES = Map.ofEntries(
            Map.entry(Category.MAYBE, Tie.MAYBE),
            Map.entry(Category.LET, Tie.MAYBE),
            Map.entry(Category.INSTEAD, Tie.MAYBE),
            Map.entry(Category.SUCH, Tie.MAYBE),
            Map.entry(Category.SORRY, Tie.SORRY),
            Map.entry(Category.YES, Tie.YES),
            Map.entry(Category.BE, Tie.BE),
            Map.entry(Category.HAVE, Tie.HAVE),
            Map.entry(Category.START, Tie.START),
            Map.entry(Category.END, Tie.END),
            Map.entry(Category.HOLD, Tie.HOLD),
            Map.entry(Category.CLIMB, Tie.CLIMB),
            Map.entry(Category.UP, Tie.UP),
            Map.entry(Category.DOWN, Tie.DOWN),
            Map.entry(Category.CHANGE, Tie.CHANGE),
            Map.entry(Category.ALL, Tie.ALL),
            Map.entry(Category.BOTH, Tie.BOTH),
            Map.entry(Category.EACH, Tie.EACH),
            Map.entry(Category.ONLY, Tie.ONLY),
            Map.entry(Category.NOT, Tie.NOT),
            Map.entry(Category.NO, Tie.NO),
            Map.entry(Category.EXCEPT, Tie.EXCEPT),
            Map.entry(Category.ANY, Tie.ANY),
            Map.entry(Category.SAME, Tie.SAME),
            Map.entry(Category.DIFFERENT, Tie.DIFFERENT),
            Map.entry(Category.LIKE, Tie.LIKE),
            Map.entry(Category.APART, Tie.APART),
            Map.entry(Category.BETWEEN, Tie.BETWEEN),
            Map.entry(Category.WHICH, Tie.WHICH),
            Map.entry(Category.THEY, Tie.THEY),
            Map.entry(Category.WE, Tie.WE),
            Map.entry(Category.AFTER, Tie.AFTER),
            Map.entry(Category.BEFORE, Tie.BEFORE),
            Map.entry(Category.COMMA, Tie.COMMA),
            Map.entry(Category.VIA, Tie.COMMA),
            Map.entry(Category.SEMICOLON, Tie.SEMICOLON),
            Map.entry(Category.BRACKET, Tie.OTHER),
            Map.entry(Category.UNTIL, Tie.OTHER),
            Map.entry(Category.OR, Tie.OTHER),
            Map.entry(Category.COLON, Tie.COLON),
            Map.entry(Category.STOP, Tie.STOP),
            Map.entry(Category.ASK, Tie.ASK));

    /** Words that mean one thing in one place and another elsewhere, tried after all others, in this order. */
    private static final List<Map.Entry<Category, Tie>> LATE = List.of(
            Map.entry(Category.THEN, Tie.THEN),
            Map.entry(Category.AND, Tie.AND),
            Map.entry(Category.BUT, Tie.BUT),
            Map.entry(Category.FALL, Tie.FALL),
            Map.entry(Category.PLAY, Tie.PLAY),
            Map.entry(Category.IT, Tie.IT),
            Map.entry(Category.THAT, Tie.THAT),
            Map.entry(Category.THERE, Tie.THERE),
            Map.entry(Category.OF, Tie.OF),
            Map.entry(Category.FROM, Tie.FROM),
            Map.entry(Category.TO, Tie.TO),
            Map.entry(Category.ON, Tie.ON),
            Map.entry(Category.IN, Tie.IN),
            Map.entry(Category.AT, Tie.AT),
            Map.entry(Category.OVER, Tie.OVER),
            Map.entry(Category.WITH, Tie.WITH),
            Map.entry(Category.ABOVE, Tie.ABOVE),
            Map.entry(Category.BELOW, Tie.BELOW),
            Map.entry(Category.FOR, Tie.FOR),
            Map.entry(Category.THROUGH, Tie.IN),
            Map.entry(Category.NOTE, Tie.NOTE),
            Map.entry(Category.NEUTRAL, Tie.ONE),
            Map.entry(Category.BAR, Tie.BAR),
            Map.entry(Category.BEAT, Tie.BEAT),
            Map.entry(Category.STRING, Tie.STRING),
            Map.entry(Category.FRET, Tie.FRET),
            Map.entry(Category.CHORD, Tie.CHORD),
            Map.entry(Category.KEY, Tie.KEY),
            Map.entry(Category.BASS, Tie.BASS),
            Map.entry(Category.TEMPO, Tie.TEMPO),
            Map.entry(Category.CLICK, Tie.TEMPO),
            Map.entry(Category.METER, Tie.METER),
            Map.entry(Category.RHYTHM, Tie.RHYTHM),
            Map.entry(Category.FEEL, Tie.FEEL),
            Map.entry(Category.THUMB, Tie.THUMB),
            Map.entry(Category.FINGERS, Tie.FINGERS),
            Map.entry(Category.LONG, Tie.LONG),
            Map.entry(Category.SLOW, Tie.SLOW),
            Map.entry(Category.HIGH, Tie.HIGH),
            Map.entry(Category.LOW, Tie.LOW),
            Map.entry(Category.AGAIN, Tie.AGAIN),
            Map.entry(Category.SO, Tie.SO));

    private Ties() {}

    static Optional<Tie> of(SpokenWord word) {
        var early = TIES.entrySet().stream()
                .filter(entry -> word.is(entry.getKey()))
                .map(Map.Entry::getValue)
                .min(Enum::compareTo);
        return early.or(() -> LATE.stream()
                .filter(entry -> word.is(entry.getKey()))
                .map(Map.Entry::getValue)
                .findFirst());
    }
}
