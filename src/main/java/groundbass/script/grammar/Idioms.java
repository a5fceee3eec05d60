package groundbass.script.grammar;

import static groundbass.script.grammar.Particles.nothing;
import static groundbass.script.grammar.Particles.says;

import groundbass.script.grammar.Constituent.Tie;
import groundbass.script.lexicon.Category;
import groundbass.script.lexicon.SpokenWords;
import groundbass.script.lexicon.SpokenWords.Found;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.function.IntPredicate;
import java.util.regex.Pattern;
import java.util.stream.IntStream;

/** Words that mean something else together than one by one, and such as say nothing where they stand. */
final class Idioms {
    private static final Pattern CONTRACTED = Pattern.compile("(?i)(is|are|was|were)n['’]t");

    private static final Pattern INVERTED = Pattern.compile("(?i)had|were|should");

    private final SpokenWords tokens;
    private final Strangers strangers;
    private final Particles particles;
    private final IntPredicate isInterval;

    /** @param isInterval whether a step between notes is named at a token */
    Idioms(SpokenWords tokens, Strangers strangers, IntPredicate isInterval) {
        this.tokens = tokens;
        this.strangers = strangers;
        this.particles = new Particles(tokens);
        this.isInterval = isInterval;
    }

    /** Nothing is found for a word that means what it means everywhere; an empty list stands for words that say nothing. */
    Optional<Found<List<Constituent>>> read(int i) {
        return particles
                .read(i)
                .or(() -> pronoun(i))
                .or(() -> invited(i))
                .or(() -> meaning(i))
                .or(() -> unreal(i))
                .or(() -> heading(i))
                .or(() -> asking(i))
                .or(() -> denial(i))
                .or(() -> way(i))
                .or(() -> order(i))
                .or(() -> likeness(i))
                .or(() -> elsewhere(i))
                .or(() -> sum(i))
                .or(() -> pair(i))
                .or(() -> triple(i))
                .or(() -> inRow(i))
                .or(() -> alone(i));
    }

    /** "Der geht", "die sind": a German article before a verb stands for a noun. */
    private Optional<Found<List<Constituent>>> pronoun(int i) {
        boolean verb = tokens.isAny(
                i + 1, Category.BE, Category.PLAY, Category.HAVE, Category.HOLD, Category.CLIMB, Category.FALL);
        boolean article = tokens.at(i).raw().toLowerCase(Locale.ROOT).matches("der|die|den|dem");
        if (!article || !verb || tokens.at(i + 1).isCapital()) {
            return Optional.empty();
        }
        boolean many = tokens.at(i + 1).raw().matches("sind|.*en");
        return says(many ? Tie.THEY : Tie.IT, i + 1);
    }

    /** "Position: frets five to eight", "your hand stays at": where the hand lies, and no note. */
    private Optional<Found<List<Constituent>>> heading(int i) {
        int with = i - 1;
        while (tokens.isAny(with, Category.FILLER, Category.THE) || strangers.isStrange(with)) {
            with--;
        }
        boolean inHand = tokens.is(i, Category.HAND) && tokens.is(with, Category.IN) && with < i - 1;
        if (inHand) { // "a pick in your right hand"
            return nothing(i + 1);
        }
        boolean heading =
                tokens.is(i, Category.POSITION) && tokens.at(i + 1).raw().equals(":");
        boolean hand =
                tokens.is(i, Category.HAND) && !tokens.is(i - 1, Category.WITH) && !tokens.is(i - 2, Category.WITH);
        return heading ? says(Tie.MAYBE, i + 2) : hand ? says(Tie.MAYBE, i + 1) : Optional.empty();
    }

    /** "If you look at it", "wenn ihr genau hinhört", "when you compare": no condition, but where to look. */
    private Optional<Found<List<Constituent>>> invited(int i) {
        boolean you = tokens.is(i, Category.CONDITION) && tokens.is(i + 1, Category.WE);
        int at = i + 2;
        while (tokens.is(at, Category.FILLER) && !tokens.is(at, Category.LOOK)) {
            at++;
        }
        if (!you || !tokens.is(at, Category.LOOK)) {
            return Optional.empty();
        }
        boolean pointed = tokens.isAny(at + 1, Category.AT, Category.TO) && tokens.is(at + 2, Category.IT);
        return says(Tie.SO, pointed ? at + 3 : at + 1);
    }

    /** "Which means bar six starts ...", "das heißt, du ...". */
    private Optional<Found<List<Constituent>>> meaning(int i) {
        boolean begins = i == 0 || tokens.isEnd(i - 1) || tokens.isAny(i - 1, Category.AND, Category.SO);
        boolean means =
                tokens.isAny(i, Category.WHICH, Category.THAT, Category.WHAT) && tokens.is(i + 1, Category.MEANING);
        int after = tokens.is(i + 2, Category.COMMA) ? i + 3 : i + 2;
        boolean clause = tokens.isAny(
                        after, Category.WE, Category.THEY, Category.IT, Category.BAR, Category.NUMBER, Category.BEAT)
                || tokens.is(after, Category.THE) && !tokens.is(after, Category.LETTER);
        return begins && means && clause ? says(Tie.SO, i + 2) : Optional.empty();
    }

    /** "Had I known", "next time": not this line, or not as it is. */
    private Optional<Found<List<Constituent>>> unreal(int i) {
        boolean begins = i == 0 || tokens.isEnd(i - 1);
        boolean had = begins && INVERTED.matcher(tokens.at(i).raw()).matches() && tokens.is(i + 1, Category.WE);
        boolean earlier = tokens.is(i, Category.LAST)
                && tokens.is(i + 1, Category.OCCASION)
                && !tokens.isAny(i + 1, Category.TIME, Category.AGAIN); // "for the last time"
        boolean later = tokens.is(i, Category.NEXT) && tokens.is(i + 1, Category.OCCASION) || earlier;
        return had ? says(Tie.MAYBE, i + 1) : later ? says(Tie.MAYBE, i + 2) : Optional.empty();
    }

    /** "Do you", "how many", "notice how". */
    private Optional<Found<List<Constituent>>> asking(int i) {
        boolean verb = tokens.is(i, Category.DO)
                && tokens.isAny(i + 1, Category.WE, Category.IT, Category.THEY, Category.THE, Category.THAT)
                && (i == 0 || !tokens.isAny(i - 1, Category.WE, Category.IT));
        if (verb) {
            return says(Tie.DO, i + 1);
        }
        if (!tokens.is(i, Category.WHAT)) {
            return Optional.empty();
        }
        boolean many = tokens.is(i + 1, Category.MANY);
        boolean compared = tokens.is(i, Category.LIKE) && !isFirstOfQuestion(i);
        boolean pointed = !compared
                && !many
                && tokens.is(i - 1, Category.FILLER)
                && !tokens.is(i - 1, Category.SO)
                && !tokens.is(tokens.size() - 1, Category.ASK);
        if (pointed) {
            return nothing(i + 1);
        }
        return many ? says(Tie.HOW_MANY, i + 2) : compared ? Optional.empty() : says(Tie.WHAT, i + 1);
    }

    /** "Und wie heißen die drei?" */
    private boolean isFirstOfQuestion(int i) {
        int first = 0;
        while (tokens.isAny(first, Category.AND, Category.SO, Category.FILLER, Category.BUT)
                && !tokens.is(first, Category.WHAT)) {
            first++;
        }
        return first == i && tokens.is(tokens.size() - 1, Category.ASK);
    }

    /** "You don't have to", "never", "isn't it?", "no more". */
    private Optional<Found<List<Constituent>>> denial(int i) {
        boolean limit = tokens.isAny(i, Category.NO, Category.NOT, Category.SILENT) && tokens.is(i + 1, Category.MORE);
        if (limit) {
            return nothing(i + 2);
        }
        if (CONTRACTED.matcher(tokens.at(i).raw()).matches() && !isTag(i)) {
            return Optional.of(
                    new Found<>(List.of(new Constituent.Small(Tie.BE), new Constituent.Small(Tie.NOT)), i + 1));
        }
        if (!tokens.is(i, Category.NOT)) {
            return Optional.empty();
        }
        boolean free = tokens.is(i + 1, Category.HAVE) && tokens.is(i + 2, Category.TO);
        if (free) {
            return says(Tie.MAYBE, i + 3);
        }
        if (isTag(i)) {
            return nothing(i + 2);
        }
        return tokens.is(i, Category.ANY)
                ? Optional.of(
                        new Found<>(List.of(new Constituent.Small(Tie.NOT), new Constituent.Small(Tie.ANY)), i + 1))
                : Optional.empty();
    }

    /** "..., isn't it?" */
    private boolean isTag(int i) {
        return tokens.isAny(i + 1, Category.IT, Category.THEY, Category.WE, Category.THERE) && tokens.isEnd(i + 2);
    }

    /** "Until the seventh fret", "nach oben", "up by a whole tone", "to worry about", "to start with". */
    private Optional<Found<List<Constituent>>> way(int i) {
        boolean until = tokens.is(i, Category.UNTIL)
                && tokens.ordinal(tokens.skip(i + 1, Category.THE)).isPresent();
        if (until) {
            return says(Tie.TO, i + 1);
        }
        boolean across = tokens.is(i, Category.OVER)
                && tokens.isAny(i + 1, Category.IN, Category.ON, Category.AT); // "over in bar six"
        if (across) {
            return nothing(i + 1);
        }
        boolean by = tokens.is(i, Category.OR) && isInterval.test(tokens.skip(i + 1, Category.THE));
        boolean opened = tokens.is(i, Category.WITH) && tokens.is(i - 1, Category.START) && tokens.isEnd(i + 1);
        if (by || opened) {
            return nothing(i + 1);
        }
        boolean beside = tokens.isAny(i, Category.ABOVE, Category.BELOW) && tokens.is(i, Category.THERE);
        if (beside) { // "darüber"
            var way = tokens.is(i, Category.ABOVE) ? Tie.ABOVE : Tie.BELOW;
            return Optional.of(
                    new Found<>(List.of(new Constituent.Small(way), new Constituent.Small(Tie.THAT)), i + 1));
        }
        if (!tokens.is(i, Category.TO)) {
            return Optional.empty();
        }
        if (tokens.isAny(i + 1, Category.UPWARD, Category.DOWNWARD)) {
            return says(tokens.is(i + 1, Category.UPWARD) ? Tie.UP : Tie.DOWN, i + 2);
        }
        if (tokens.is(i, Category.AFTER)) { // "nach"
            return says(isAfter(i) ? Tie.AFTER : Tie.TO, i + 1);
        }
        boolean passive = tokens.is(i + 1, Category.BE)
                && tokens.isAny(i + 2, Category.PLAY, Category.HOLD, Category.MANNER); // "is to be found on"
        if (passive) {
            return nothing(i + 2);
        }
        boolean compared = tokens.is(i - 1, Category.SAME) && tokens.is(i + 1, Category.BAR); // "identical to bar two"
        if (compared) {
            return nothing(i + 1);
        }
        boolean exact = tokens.is(i + 1, Category.BE) && strangers.isStrange(i + 2); // "to be exact"
        if (exact) {
            return nothing(i + 3);
        }
        boolean purpose = strangers.isStrange(i + 1) || tokens.is(i + 1, Category.FILLER) && tokens.isEnd(i + 2);
        return purpose ? nothing(i + 2) : tokens.is(i + 1, Category.START) ? nothing(i + 1) : Optional.empty();
    }

    /** "Nach dem G kommt ..." and "gleich nach der Pause", but "von C nach D". */
    private boolean isAfter(int i) {
        int from = i;
        while (from > 0 && !tokens.isEnd(from - 1)) {
            from--;
        }
        boolean led = IntStream.range(from, i).anyMatch(at -> tokens.isAny(at, Category.FROM, Category.OF));
        boolean begins = from == i
                || from == i - 1 && tokens.isAny(from, Category.AND, Category.SO, Category.BUT, Category.THEN);
        boolean article = tokens.isAny(i + 1, Category.THE, Category.THAT, Category.THEY);
        return !led && (begins || article);
    }

    /** "Let it ring", "let's", "followed by", and words with which speakers begin anew where nobody wrote a mark. */
    private Optional<Found<List<Constituent>>> order(int i) {
        if (tokens.is(i, Category.LET)) {
            boolean bidden =
                    tokens.isAny(i + 1, Category.IT, Category.THEY, Category.THAT, Category.THE, Category.LETTER);
            boolean us = tokens.is(i + 1, Category.BE);
            return bidden ? nothing(i + 1) : us ? nothing(i + 2) : Optional.empty();
        }
        boolean followed =
                tokens.is(i, Category.FOLLOWED) && tokens.isAny(i + 1, Category.OR, Category.OF, Category.FROM);
        if (followed) {
            return says(Tie.THEN, i + 2);
        }
        boolean breath = tokens.isLowered() && tokens.is(i, Category.BREATH);
        return breath ? says(Tie.SO, i + 1) : Optional.empty();
    }

    /** "As bar one", ", like,", "gleich danach". */
    private Optional<Found<List<Constituent>>> likeness(int i) {
        boolean likened = tokens.is(i, Category.AS) && tokens.isAny(i + 1, Category.BAR, Category.BEAT);
        if (likened) {
            return says(Tie.LIKE, i + 1);
        }
        boolean aside =
                tokens.is(i, Category.LIKE) && tokens.is(i - 1, Category.COMMA) && tokens.is(i + 1, Category.COMMA);
        boolean soon = tokens.is(i, Category.SAME)
                && tokens.is(i, Category.FILLER)
                && !tokens.is(i - 1, Category.BE)
                && !tokens.isEnd(i + 1); // "Takt eins und zwei sind im Rhythmus genau gleich"
        return aside || soon ? nothing(i + 1) : Optional.empty();
    }

    /** "In other songs", "in most tunes", "most bars": not this line, or not this bar. */
    private Optional<Found<List<Constituent>>> elsewhere(int i) {
        boolean other = tokens.is(i, Category.OTHERS)
                && tokens.isAny(i + 1, Category.LINE, Category.LINES, Category.BAR, Category.TIME, Category.OCCASION);
        boolean second = tokens.is(i, Category.OTHERS) && tokens.isAny(i + 1, Category.NEUTRAL, Category.NOTE);
        if (second) { // "the other one": which that is, nobody knows
            return says(Tie.OTHER, i + 1);
        }
        return tokens.is(i, Category.LINES)
                ? says(Tie.MAYBE, i + 1)
                : other ? says(Tie.MAYBE, i + 2) : Optional.empty();
    }

    /** "Four e and a", "one and two and three and": index after what is counted aloud; the same where nothing is. */
    int aloud(int i) {
        int at = i;
        int numbers = 0;
        boolean parts = false;
        while (tokens.is(at, Category.NUMBER) && isNext(at, at == i ? -1 : before(at))) {
            numbers++;
            boolean all = isPart(at + 1, 1) && isPart(at + 2, 2) && isPart(at + 3, 3);
            parts |= all;
            int and = isPart(at + 1, 2) ? at + 2 : at + 1;
            at = all ? at + 4 : and;
        }
        boolean row = numbers > 2 && at > i + 2 * (numbers - 1);
        return parts || row ? at : i;
    }

    private boolean isNext(int at, int before) {
        return before < 0 || tokens.at(at).number(Category.NUMBER) == before + 1;
    }

    /** The number before this one. */
    private int before(int at) {
        int number = at - 1;
        while (!tokens.is(number, Category.NUMBER)) {
            number--;
        }
        return tokens.at(number).number(Category.NUMBER);
    }

    private boolean isPart(int i, int part) {
        return tokens.is(i, Category.PART) && tokens.at(i).number(Category.PART) == part;
    }

    /** "One more time", "all told", "if you count". */
    private Optional<Found<List<Constituent>>> sum(int i) {
        if (tokens.is(i, Category.COUNTED)) {
            return says(Tie.RECKON, i + 1);
        }
        if (tokens.is(i, Category.SUM)) {
            return says(Tie.SUM, i + 1);
        }
        boolean again = tokens.is(i, Category.MORE) && tokens.is(i + 1, Category.TIME);
        if (again) {
            return says(Tie.AGAIN, i + 2);
        }
        boolean all = tokens.is(i, Category.ALL) && tokens.is(i + 1, Category.SUM);
        return all ? says(Tie.SUM, i + 2) : Optional.empty();
    }

    /** "Between them", "the last beat of all". */
    private Optional<Found<List<Constituent>>> pair(int i) {
        boolean among = tokens.is(i, Category.BETWEEN) && tokens.is(i + 1, Category.THEY);
        boolean ofAll = tokens.is(i, Category.OF)
                && tokens.is(i + 1, Category.ALL)
                && (tokens.isEnd(i + 2) || tokens.is(i + 2, Category.BE));
        boolean apart = among && strangers.isStrange(i - 1); // "the distance between those two"
        return apart ? says(Tie.THEY, i + 2) : among || ofAll ? nothing(i + 2) : Optional.empty();
    }

    /** "In a row". */
    private Optional<Found<List<Constituent>>> inRow(int i) {
        boolean row = tokens.is(i, Category.IN)
                && tokens.is(i + 1, Category.THE)
                && tokens.at(i + 2).raw().equals("row");
        boolean order =
                tokens.at(i).raw().equalsIgnoreCase("reihe") && tokens.is(i + 1, Category.TO); // "der Reihe nach"
        return row ? nothing(i + 3) : order ? nothing(i + 2) : Optional.empty();
    }

    /** "By the way", "note for note", "over this chord, ...", "from top to bottom". */
    private Optional<Found<List<Constituent>>> triple(int i) {
        boolean besides = tokens.is(i, Category.OR) && tokens.is(i + 1, Category.THE) && tokens.is(i + 2, Category.WAY);
        boolean alike =
                tokens.is(i, Category.NOTE) && tokens.is(i + 1, Category.FOR) && tokens.is(i + 2, Category.NOTE);
        boolean harmony = tokens.is(i, Category.OVER)
                && tokens.isAny(i + 1, Category.THE, Category.THAT)
                && tokens.is(i + 2, Category.CHORD)
                && tokens.isEnd(i + 3);
        boolean throughout = tokens.is(i, Category.FROM)
                && tokens.is(i + 1, Category.HIGHEST)
                && tokens.is(i + 2, Category.TO)
                && tokens.is(i + 3, Category.LOWEST);
        return throughout ? nothing(i + 4) : besides || alike || harmony ? nothing(i + 3) : Optional.empty();
    }

    /** The sign of a plural: "four F's". */
    private Optional<Found<List<Constituent>>> alone(int i) {
        boolean plural = tokens.at(i).raw().matches("['’]s")
                && tokens.isPluralName(i - 1)
                && tokens.isAny(i - 2, Category.NUMBER, Category.THEY, Category.BOTH, Category.ALL);
        return plural ? nothing(i + 1) : Optional.empty();
    }
}
