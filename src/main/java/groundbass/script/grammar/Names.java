package groundbass.script.grammar;

import groundbass.script.lexicon.Category;
import groundbass.script.lexicon.SpokenWords;
import groundbass.script.lexicon.SpokenWords.Found;
import groundbass.theory.NoteName;
import java.util.Optional;

/** Reads names of notes, and tells the note A from the article, E from a part of a beat, Es from the pronoun. */
final class Names {
    private final SpokenWords tokens;

    Names(SpokenWords tokens) {
        this.tokens = tokens;
    }

    Optional<Found<NoteName>> name(int i) {
        var plural = tokens.pluralLetter(i);
        if (plural.isPresent()) {
            return plural.flatMap(NoteName::parse).map(name -> new Found<>(name, i + 1));
        }
        if (!tokens.is(i, Category.LETTER) || !isName(i)) {
            return Optional.empty();
        }
        var plain = NoteName.parse(tokens.at(i).value(Category.LETTER)).orElseThrow();
        boolean signed = plain.alteration() == 0 && tokens.is(i + 1, Category.SIGN);
        return Optional.of(
                signed
                        ? new Found<>(
                                new NoteName(plain.letter(), tokens.at(i + 1).number(Category.SIGN)), i + 2)
                        : new Found<>(plain, i + 1));
    }

    /** A letter where only a name can stand. */
    Optional<Found<NoteName>> letter(int i) {
        return tokens.is(i, Category.LETTER)
                ? NoteName.parse(tokens.at(i).value(Category.LETTER)).map(name -> new Found<>(name, i + 1))
                : Optional.empty();
    }

    private boolean isName(int i) {
        var token = tokens.at(i);
        boolean named = tokens.is(i - 1, Category.TO) && tokens.is(i - 2, Category.LETTER); // "F to A, major third"
        boolean interval = token.raw().equalsIgnoreCase("a")
                && tokens.is(i + 1, Category.MODE)
                && tokens.isAny(i + 2, Category.ORDINAL, Category.INTERVAL);
        boolean alone = (i == 0 || tokens.isEnd(i - 1)) && tokens.isEnd(i + 3);
        if (interval && (token.isCapital() ? alone : !named)) {
            return false; // "a minor third"; "How far? A minor third."
        }
        if (tokens.isAny(i + 1, Category.SIGN, Category.STRING, Category.MODE)) {
            return true;
        }
        if (token.is(Category.IT)) { // Es
            boolean begins = i == 0 || tokens.is(i - 1, Category.STOP);
            return (token.isCapital() && !(begins && isVerb(i + 1))) || (tokens.isLowered() && isLedTo(i - 1));
        }
        if (token.is(Category.THE)) {
            return isNoteA(i);
        }
        if (token.is(Category.AT)) { // "am" is no name, As may be
            return token.isCapital() && !token.raw().equals("Am");
        }
        boolean written = token.isCapital() || tokens.isLowered();
        boolean part = token.is(Category.PART)
                && tokens.is(i - 1, Category.THE)
                && tokens.is(i + 1, Category.AND)
                && tokens.is(i + 2, Category.THE)
                && tokens.is(i + 3, Category.PART);
        return written && !part && !(token.is(Category.PART) && tokens.is(i + 1, Category.OF));
    }

    /** "Das es", "von es nach g": after such words the pronoun hardly stands. */
    private boolean isLedTo(int i) {
        return tokens.isAny(i, Category.THE, Category.FROM, Category.OF, Category.OVER)
                || tokens.isAny(i, Category.ON, Category.TO) && !tokens.isAny(i - 1, Category.PLAY, Category.HAVE);
    }

    private boolean isVerb(int i) {
        return tokens.isAny(i, Category.BE, Category.HAVE, Category.PLAY, Category.HOLD, Category.START, Category.END);
    }

    private boolean isNoteA(int i) {
        boolean article = tokens.at(i).raw().equals("a")
                && tokens.isAny(i + 1, Category.LENGTH, Category.DOTTED, Category.TUPLET, Category.REST);
        if (article) { // "G, a quarter"
            return false;
        }
        boolean after = tokens.isAny(i - 1, Category.THE, Category.OPEN, Category.HIGH, Category.LOW)
                || (tokens.is(i - 1, Category.LETTER) && !tokens.isEnd(i - 1));
        boolean capital = tokens.at(i).raw().equals("A") && i > 0 && !tokens.is(i - 1, Category.STOP);
        boolean stands = tokens.isEnd(i + 1)
                || tokens.isAny(
                        i + 1,
                        Category.AND,
                        Category.TO,
                        Category.ON,
                        Category.IN,
                        Category.FOR,
                        Category.BE,
                        Category.THEN,
                        Category.AT,
                        Category.FROM,
                        Category.OF);
        boolean path = tokens.is(i - 1, Category.FROM) && tokens.isAny(i + 1, Category.UP, Category.DOWN);
        return after || capital || stands || path;
    }
}
