package groundbass.script.grammar;

import groundbass.script.lexicon.Category;
import groundbass.script.lexicon.SpokenWords;
import java.util.regex.Pattern;

/**
 * Tells by its form and its neighbours what a word is that no table has, where it adds nothing that could be checked: how
 * something is done or how somebody finds it, or what a player does with what follows. Words of music that are not read
 * stand in the tables, so that they stay unknown here.
 */
final class Strangers {
    private static final Pattern ADVERB = Pattern.compile("\\p{Ll}{3,}(ly|weise|lich)");

    /** Of a verb that stands before its subject, as in German. */
    private static final Pattern TURNED = Pattern.compile("\\p{Ll}{3,}(st|t|en)");

    private final SpokenWords tokens;

    Strangers(SpokenWords tokens) {
        this.tokens = tokens;
    }

    /** "Lazily"; "a lazy quaver", "those three lazy little Es". */
    boolean isIdle(int i) {
        return isStrange(i) && (ADVERB.matcher(tokens.at(i).raw()).matches() || isAdjective(i));
    }

    /** "You grab", "dann schnappst du", "the octave lives on". */
    boolean isVerb(int i) {
        int before = i - 1;
        while (tokens.is(before, Category.FILLER) && !tokens.is(before, Category.WE)) {
            before--;
        }
        boolean turned = tokens.is(i + 1, Category.WE)
                && TURNED.matcher(tokens.at(i).raw()).matches();
        boolean thing = tokens.isAny(i + 1, Category.ON, Category.AT, Category.IN, Category.OVER)
                && tokens.isAny(
                        before,
                        Category.LETTER,
                        Category.NOTE,
                        Category.NEUTRAL,
                        Category.OCTAVE,
                        Category.MANNER,
                        Category.LENGTH,
                        Category.TUPLET,
                        Category.CHORD,
                        Category.REST);
        boolean object = tokens.isAny(before - 1, Category.PLAY, Category.HAVE, Category.BE); // "it walks you home"
        boolean it =
                tokens.is(before, Category.IT) && tokens.isAny(before - 1, Category.SO, Category.AND, Category.COMMA)
                        || tokens.is(before, Category.IT) && before == 0;
        return isStrange(i) && (turned || thing || it || tokens.is(before, Category.WE) && !object);
    }

    boolean isStrange(int i) {
        var token = tokens.at(i);
        return !token.raw().isEmpty() && (!token.isKnown() || token.is(Category.OTHERS));
    }

    /** What stands between an article or a number and what it is of. */
    private boolean isAdjective(int i) {
        int before = i - 1;
        while (isBetween(before)) {
            before--;
        }
        int after = i + 1;
        while (isBetween(after)) {
            after++;
        }
        boolean led = tokens.isAny(
                before, Category.THE, Category.NUMBER, Category.THAT, Category.THEY, Category.EACH, Category.OF);
        boolean noun = tokens.isAny(
                after,
                Category.NOTE,
                Category.LENGTH,
                Category.DOTTED,
                Category.TUPLET,
                Category.MANNER,
                Category.DEAD,
                Category.REST,
                Category.LETTER,
                Category.OCTAVE);
        return led && noun && !tokens.is(after, Category.THE);
    }

    private boolean isBetween(int i) {
        return isStrange(i) || tokens.is(i, Category.FILLER);
    }
}
