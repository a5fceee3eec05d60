package groundbass.script.lexicon;

import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.regex.Pattern;

/** The tokens of a sentence, with what every reader of them asks. Beyond its ends there is nothing. */
public final class SpokenWords {
    private static final Pattern PLURAL = Pattern.compile("[A-Ga-g]s");

    private final List<SpokenWord> tokens;
    private final boolean lowered;

    /** Something read, and the index of the token after it. */
    public record Found<T>(T value, int after) {}

    /** @param lowered whether the script has no capital letters, so that notes are written small */
    public SpokenWords(List<SpokenWord> tokens, boolean lowered) {
        this.tokens = List.copyOf(tokens);
        this.lowered = lowered;
    }

    public int size() {
        return tokens.size();
    }

    public boolean isLowered() {
        return lowered;
    }

    public SpokenWord at(int i) {
        return i >= 0 && i < tokens.size() ? tokens.get(i) : SpokenWord.NOTHING;
    }

    public boolean is(int i, Category category) {
        return at(i).is(category);
    }

    public boolean isAny(int i, Category... categories) {
        return at(i).isAny(categories);
    }

    public boolean isEnd(int i) {
        return i >= tokens.size() || isAny(i, Category.COMMA, Category.STOP, Category.COLON, Category.ASK);
    }

    /** "F's". */
    public boolean isPluralName(int i) {
        return is(i, Category.LETTER) && at(i + 1).raw().matches("['’]s")
                || pluralLetter(i).isPresent();
    }

    /** "Two Ds": the letter, where it stands for notes. */
    public Optional<String> pluralLetter(int i) {
        String raw = at(i).raw();
        boolean counted = isAny(
                i - 1,
                Category.NUMBER,
                Category.THEY,
                Category.BOTH,
                Category.ALL,
                Category.BE,
                Category.THE,
                Category.LOW,
                Category.HIGH);
        boolean letter = raw.length() == 2 && PLURAL.matcher(raw).matches() && !is(i, Category.LETTER);
        boolean written = Character.isUpperCase(raw.isEmpty() ? ' ' : raw.charAt(0)) || isLowered();
        boolean likened = is(i, Category.AS) && isAny(i + 1, Category.BAR, Category.BEAT); // "beats 1 to 3 as bar 2"
        boolean added = is(i, Category.AS) && is(i + 1, Category.FILLER); // "bar two as well"
        boolean other = likened || added || at(i).isKnown() && !is(i - 1, Category.NUMBER); // "as"
        return letter && written && counted && !other
                ? Optional.of(raw.substring(0, 1).toUpperCase(Locale.ROOT))
                : Optional.empty();
    }

    public int skip(int i, Category... categories) {
        int at = i;
        while (isAny(at, categories) && !isNameOfString(at)) {
            at++;
        }
        return at;
    }

    /** "The A string": its A is no article. */
    private boolean isNameOfString(int i) {
        return is(i, Category.THE) && is(i, Category.LETTER) && is(i + 1, Category.STRING);
    }

    /** A number to 399, in figures or in words. */
    public Optional<Found<Integer>> number(int i) {
        boolean article = is(i, Category.THE) && is(i + 1, Category.HUNDRED);
        int at = article ? i + 1 : i;
        var first = small(at);
        if (first.isPresent() && is(first.get().after(), Category.HUNDRED)) {
            return hundreds(first.get().value(), first.get().after() + 1);
        }
        return is(at, Category.HUNDRED) ? hundreds(1, at + 1) : first;
    }

    private Optional<Found<Integer>> hundreds(int many, int after) {
        int rest = is(after, Category.AND) && small(after + 1).isPresent() ? after + 1 : after;
        return Optional.of(small(rest)
                .map(found -> new Found<>(many * 100 + found.value(), found.after()))
                .orElse(new Found<>(many * 100, after)));
    }

    private Optional<Found<Integer>> small(int i) {
        if (is(i, Category.TENS)) {
            int tens = at(i).number(Category.TENS);
            boolean ones = is(i + 1, Category.NUMBER)
                    && at(i + 1).number(Category.NUMBER) < 10
                    && at(i + 1).number(Category.NUMBER) > 0;
            return Optional.of(
                    ones ? new Found<>(tens + at(i + 1).number(Category.NUMBER), i + 2) : new Found<>(tens, i + 1));
        }
        if (!is(i, Category.NUMBER)) {
            return Optional.empty();
        }
        int value = at(i).number(Category.NUMBER);
        // "one twenty" is how a tempo is said
        boolean spoken = value >= 1
                && value <= 3
                && isAny(i + 1, Category.TENS)
                && at(i).raw().length() > 1
                && !isAny(
                        i - 1,
                        Category.SLOW,
                        Category.SHORT,
                        Category.LONG,
                        Category.HIGH,
                        Category.LOW); // "a slow one"
        if (spoken) {
            return small(i + 1).map(found -> new Found<>(value * 100 + found.value(), found.after()));
        }
        return Optional.of(new Found<>(value, i + 1));
    }

    public Optional<Found<Integer>> ordinal(int i) {
        if (is(i, Category.TENS) && is(i + 1, Category.ORDINAL)) {
            return Optional.of(
                    new Found<>(at(i).number(Category.TENS) + at(i + 1).number(Category.ORDINAL), i + 2));
        }
        return is(i, Category.ORDINAL)
                ? Optional.of(new Found<>(at(i).number(Category.ORDINAL), i + 1))
                : Optional.empty();
    }

    /** Whether a noun follows that the number counts. */
    public boolean isCounting(int i) {
        boolean byNote = is(i, Category.NOTE) && is(i + 1, Category.FOR); // "note for note"
        return !byNote && isNounOfNumber(i);
    }

    private boolean isNounOfNumber(int i) {
        return isAny(
                        i,
                        Category.NOTE,
                        Category.STRING,
                        Category.FRET,
                        Category.LENGTH,
                        Category.REST,
                        Category.DEAD,
                        Category.OCTAVE,
                        Category.TIME,
                        Category.DOTTED,
                        Category.HALF,
                        Category.TUPLET)
                || is(i, Category.MANNER) && !is(i + 1, Category.WE) // "auf der Drei rutschst du"
                || is(i, Category.BEAT) && number(i + 1).isEmpty() && !is(i - 2, Category.BEAT);
    }
}
