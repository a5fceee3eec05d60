package groundbass.script.grammar;

import groundbass.script.grammar.Constituent.Tie;
import groundbass.script.lexicon.Category;
import groundbass.script.lexicon.SpokenWords;
import groundbass.script.lexicon.SpokenWords.Found;
import java.util.List;
import java.util.Optional;
import java.util.stream.IntStream;

/** Words that tell what role another has, set it against another, or only lead on: "als Achtel", "rather than", "und zwar". */
final class Particles {
    /** So many words may stand between "lass" and what is let go on. */
    private static final int LET = 6;

    private final SpokenWords tokens;

    Particles(SpokenWords tokens) {
        this.tokens = tokens;
    }

    /** Nothing is found for a word that means what it means everywhere; an empty list stands for words that say nothing. */
    Optional<Found<List<Constituent>>> read(int i) {
        return directly(i)
                .or(() -> joining(i))
                .or(() -> parted(i))
                .or(() -> role(i))
                .or(() -> particle(i))
                .or(() -> contrast(i))
                .or(() -> through(i))
                .or(() -> atOnce(i))
                .or(() -> thus(i));
    }

    static Optional<Found<List<Constituent>>> says(Tie tie, int after) {
        return Optional.of(new Found<>(List.of(new Constituent.Small(tie)), after));
    }

    static Optional<Found<List<Constituent>>> nothing(int after) {
        return Optional.of(new Found<>(List.of(), after));
    }

    /** "Daran schließen sich ... an": what comes next, and nothing that ends; so does its last word, apart from its verb. */
    private Optional<Found<List<Constituent>>> joining(int i) {
        if (isJoining(i)) {
            return says(Tie.PLAY, i + 2);
        }
        boolean particle = tokens.isAny(i, Category.START, Category.AT)
                && tokens.isEnd(i + 1)
                && IntStream.range(0, i).anyMatch(this::isJoining);
        return particle ? nothing(i + 1) : Optional.empty();
    }

    /** "Das macht einen Ganzton aus", "da schlägst du dreimal an": the last word belongs to the verb. */
    private Optional<Found<List<Constituent>>> parted(int i) {
        int from = i;
        while (from > 0 && !tokens.isEnd(from - 1)) {
            from--;
        }
        boolean verb = IntStream.range(from, i)
                .anyMatch(at -> tokens.isAny(at, Category.PLAY, Category.HOLD, Category.BE)
                        || !tokens.at(at).isKnown());
        boolean other = IntStream.range(from, i)
                .anyMatch(at -> tokens.isAny(at, Category.OF, Category.FROM, Category.START, Category.END));
        return tokens.is(i, Category.SEPARABLE) && tokens.isEnd(i + 1) && i > from + 1 && verb && !other
                ? nothing(i + 1)
                : Optional.empty();
    }

    private boolean isJoining(int i) {
        return tokens.is(i, Category.JOINING) && tokens.is(i + 1, Category.SELF);
    }

    /** "A und C als zwei Achtel", "das E als Pull-off": what something is, and nothing that it is compared with. */
    private Optional<Found<List<Constituent>>> role(int i) {
        int at = tokens.skip(i + 1, Category.THE, Category.NUMBER, Category.FILLER, Category.SINGLE);
        boolean thing = tokens.isAny(
                at,
                Category.LENGTH,
                Category.DOTTED,
                Category.HALF,
                Category.TUPLET,
                Category.MANNER,
                Category.DEAD,
                Category.LAST,
                Category.NEXT,
                Category.ORDINAL,
                Category.REST);
        boolean compared = !tokens.at(i - 1).isKnown()
                || tokens.isAny(
                        i - 1,
                        Category.MORE,
                        Category.UP,
                        Category.DOWN,
                        Category.HIGH,
                        Category.LOW,
                        Category.SLOW,
                        Category.OTHERS,
                        Category.DIFFERENT,
                        Category.UNREAD);
        return tokens.is(i, Category.ROLE) && thing && !compared ? nothing(i + 1) : Optional.empty();
    }

    /** "That slide, start and finish": all of it. */
    private Optional<Found<List<Constituent>>> through(int i) {
        boolean both = tokens.is(i, Category.START)
                && tokens.is(i + 1, Category.AND)
                && tokens.is(i + 2, Category.END)
                && tokens.isEnd(i + 3);
        return both ? nothing(i + 3) : Optional.empty();
    }

    /** "Und zwar auf der D-Saite", "das ist ja bloß", "lasst ihr lange stehen": words that only lead on, or end a clause. */
    private Optional<Found<List<Constituent>>> particle(int i) {
        boolean namely = tokens.is(i, Category.AND) && tokens.is(i + 1, Category.NAMELY);
        if (namely) {
            return tokens.isLowered() ? says(Tie.WITH, i + 2) : nothing(i + 2);
        }
        boolean inside = tokens.is(i, Category.COLOURING)
                && tokens.isAny(i - 1, Category.WE, Category.IT, Category.BE, Category.PLAY, Category.HAVE);
        boolean left = tokens.isAny(i, Category.PLAY, Category.HOLD)
                && tokens.at(i).raw().endsWith("en")
                && IntStream.range(Math.max(0, i - LET), i).anyMatch(at -> tokens.is(at, Category.LETTING));
        return inside || left ? nothing(i + 1) : Optional.empty();
    }

    /** "Popped rather than slapped", "instead of a D". */
    private Optional<Found<List<Constituent>>> contrast(int i) {
        int after = i + 1;
        boolean thing = tokens.isAny(
                tokens.skip(after, Category.THE),
                Category.MANNER,
                Category.LETTER,
                Category.LENGTH,
                Category.DOTTED,
                Category.OPEN,
                Category.DEAD);
        return tokens.is(i, Category.INSTEAD) && thing && i > 0 ? says(Tie.NOT, after) : Optional.empty();
    }

    /** "Right after", "gleich danach". */
    private Optional<Found<List<Constituent>>> directly(int i) {
        boolean after = tokens.is(i, Category.DIRECT) && tokens.is(i + 1, Category.AFTER);
        return after
                ? Optional.of(new Found<>(
                        List.of(new Constituent.Small(Tie.AFTER), new Constituent.Small(Tie.DIRECTLY)), i + 2))
                : Optional.empty();
    }

    /** "Right away". */
    private Optional<Found<List<Constituent>>> atOnce(int i) {
        boolean near = tokens.is(i, Category.APART) && tokens.is(i - 1, Category.FILLER);
        return near ? nothing(i + 1) : Optional.empty();
    }

    /** "Da spielst du also ein D": behind verb and subject it ties nothing. */
    private Optional<Found<List<Constituent>>> thus(int i) {
        boolean inside = tokens.is(i, Category.SO)
                && tokens.isAny(i - 1, Category.WE, Category.IT, Category.THAT)
                && tokens.isAny(i - 2, Category.PLAY, Category.BE, Category.HAVE, Category.HOLD, Category.MANNER);
        return inside ? nothing(i + 1) : Optional.empty();
    }
}
