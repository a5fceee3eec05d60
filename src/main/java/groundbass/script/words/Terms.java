package groundbass.script.words;

import java.util.List;
import java.util.Map;
import java.util.Optional;

/** The terms of one sentence, with what every reader of them asks. Beyond its ends there is nothing. */
public final class Terms {
    private static final Term NOTHING = new Term(Map.of(), "", 0, 0);

    private final List<Term> terms;
    private final boolean shouted;
    private final boolean lowered;

    public Terms(List<Term> terms) {
        this.terms = List.copyOf(terms);
        this.shouted =
                terms.stream().map(Term::raw).filter(raw -> raw.length() > 1).noneMatch(Terms::hasSmall);
        this.lowered = terms.stream()
                .map(Term::raw)
                .filter(raw -> !raw.equals("I"))
                .noneMatch(raw -> raw.chars().anyMatch(Character::isUpperCase));
    }

    private static boolean hasSmall(String raw) {
        return raw.chars().anyMatch(Character::isLowerCase);
    }

    public int size() {
        return terms.size();
    }

    public Term at(int i) {
        return i >= 0 && i < terms.size() ? terms.get(i) : NOTHING;
    }

    public boolean is(int i, Sense sense) {
        return at(i).is(sense);
    }

    public boolean isAny(int i, Sense... senses) {
        for (var sense : senses) {
            if (is(i, sense)) {
                return true;
            }
        }
        return false;
    }

    /** Whether a thought may end before this term. */
    public boolean isBreak(int i) {
        return i >= terms.size()
                || isAny(i, Sense.COMMA, Sense.COLON, Sense.SEMICOLON, Sense.STOP, Sense.QUESTION)
                || isAny(i, Sense.AND, Sense.BUT, Sense.THEN, Sense.SO, Sense.PRONOUN, Sense.THAT);
    }

    /** Whether the text has capital letters only, so that they say nothing. */
    public boolean isShouted() {
        return shouted;
    }

    /** Whether the text has no capital letters, so that notes are written small. */
    public boolean isLowered() {
        return lowered;
    }

    public boolean has(Sense sense) {
        return terms.stream().anyMatch(term -> term.is(sense));
    }

    public Optional<Found<Integer>> number(int i) {
        return composed(i, Sense.NUMBER);
    }

    public Optional<Found<Integer>> ordinal(int i) {
        return composed(i, Sense.ORDINAL);
    }

    private Optional<Found<Integer>> composed(int i, Sense sense) {
        if (is(i, Sense.TENS)) {
            int tens = at(i).number(Sense.TENS);
            if (is(i + 1, sense) && at(i + 1).number(sense) < 10) {
                return Optional.of(new Found<>(tens + at(i + 1).number(sense), i + 2));
            }
            return sense == Sense.NUMBER ? Optional.of(new Found<>(tens, i + 1)) : Optional.empty();
        }
        return is(i, sense) ? Optional.of(new Found<>(at(i).number(sense), i + 1)) : Optional.empty();
    }

    /** Past a comma, "and", "then", "to" and the like; empty where there is none. True where one thing leads to the next. */
    public Optional<Found<Boolean>> separator(int i) {
        int after = i;
        boolean path = false;
        while (after < i + 4 && isAny(after, Sense.COMMA, Sense.AND, Sense.TO, Sense.THEN) && !isLead(after)) {
            path |= is(after, Sense.TO);
            after++;
        }
        return after == i ? Optional.empty() : Optional.of(new Found<>(path, after));
    }

    private boolean isLead(int i) {
        return is(i, Sense.LEAD) && !isAny(i, Sense.TO, Sense.THEN);
    }

    /** Past articles and words of register ("the low"). */
    public int skipArticles(int i) {
        int after = i;
        while (isAny(after, Sense.THE, Sense.REGISTER, Sense.GLUE) && !isAny(after, Sense.NUMBER, Sense.ORDINAL)) {
            if (is(after, Sense.LETTER)
                    && !at(after).raw().equals("a")
                    && !at(after).raw().equals("an")) {
                break;
            }
            if (is(after, Sense.LETTER) && is(after + 1, Sense.STRING)) {
                break; // the a string
            }
            after++;
        }
        return after;
    }
}
