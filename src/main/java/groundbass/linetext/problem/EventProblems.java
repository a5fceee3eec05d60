package groundbass.linetext.problem;

import groundbass.linetext.source.Limits;
import groundbass.linetext.source.Moment;
import groundbass.linetext.source.Token;
import groundbass.remark.Choice;
import groundbass.remark.Remark;
import groundbass.remark.Span;
import groundbass.score.Direction;
import groundbass.score.Fraction;
import groundbass.score.Meter;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/** What can be wrong with a count line, an event, a place or a word. */
public final class EventProblems {
    private static final Pattern FRET_FIRST = Pattern.compile("(\\d{1,2}|x)([A-G][#b]{0,2})");

    private EventProblems() {}

    public static Remark badCount(Token found) {
        var first = IntStream.range(0, found.text().length())
                .takeWhile(i -> Character.isDigit(found.text().charAt(i)))
                .count();
        return Mistake.BAD_COUNT
                .at(found.span(), found.text())
                .suggesting(Optional.of(found.text().substring(0, (int) Math.min(2, first)))
                        .filter(number -> !number.isEmpty() && !number.startsWith("0"))
                        .stream()
                        .flatMap(number -> Stream.of(number, number + "e", number + "&", number + "a")));
    }

    public static Remark noEvents(Span span) {
        return Mistake.NO_EVENT.at(span).suggesting("rest");
    }

    public static Remark emptyEvent(Span span) {
        return Mistake.EMPTY_EVENT.at(span);
    }

    public static Remark tooManyShares(Span span) {
        return Mistake.TOO_MANY_SHARES.at(span, Limits.MOST_SHARES);
    }

    public static Remark unreadable(Token found) {
        return Mistake.UNREADABLE.at(found.span(), found.text());
    }

    public static Remark restWithPlaces(Span span) {
        return Mistake.REST_WITH_PLACES.at(span);
    }

    public static Remark noPlace(Span span) {
        return Mistake.NO_PLACE.at(span);
    }

    public static Remark noSuchPlace(Token found, Optional<String> nearest) {
        return Mistake.NO_SUCH_PLACE
                .at(found.span(), found.text())
                .suggesting(nearest.or(() -> capital(found.text())).or(() -> turned(found.text())));
    }

    /** {@code a3} and {@code AX} for {@code A3} and {@code Ax}. */
    private static Optional<String> capital(String text) {
        char first = Character.toUpperCase(text.charAt(0));
        String rest = text.substring(1);
        boolean place = first >= 'A' && first <= 'G' && rest.matches("[#b]{0,2}(\\d{1,2}|[xX])");
        return place ? Optional.of(first + rest.replace('X', 'x')) : Optional.empty();
    }

    /** {@code 3E} for {@code E3}. */
    private static Optional<String> turned(String text) {
        var turned = FRET_FIRST.matcher(text);
        return turned.matches() ? Optional.of(turned.group(2) + turned.group(1)) : Optional.empty();
    }

    public static boolean isFretFirst(Token token) {
        return turned(token.text()).isPresent();
    }

    public static Remark apart(Span span, String together) {
        return Mistake.APART.at(span).suggesting(together);
    }

    public static Remark noComma(Token found) {
        return Mistake.NO_COMMA.at(found.span()).suggesting(", " + found.text(), "+ " + found.text());
    }

    public static Remark plusForAnd(Span span, String count) {
        return Mistake.PLUS_FOR_AND.at(span).suggesting(count + "&");
    }

    public static Remark noFret(Token found) {
        return Mistake.NO_FRET.at(found.span(), found.text());
    }

    public static Remark noSuchString(Span span, String found, List<String> strings) {
        return Mistake.NO_SUCH_STRING.at(span, found, String.join(" ", strings));
    }

    public static Remark ambiguousString(Span span, String found, List<String> offers) {
        return Mistake.AMBIGUOUS_STRING.at(span, found).suggesting(offers.stream());
    }

    public static Remark fretOffNeck(Span span, String fret, String string, int frets) {
        return Mistake.FRET_OFF_NECK.at(span, fret, string, frets).suggesting(MeantFret.near(fret, frets));
    }

    public static Remark unknownWord(Token found, List<String> known) {
        return Mistake.UNKNOWN_WORD
                .at(found.span(), found.text(), String.join(" ", known))
                .suggesting(OtherNames.of(found.text()).or(() -> Nearest.to(found.text(), known)));
    }

    public static Remark notForRest(Token found) {
        return Mistake.NOT_FOR_REST.at(found.span(), found.text());
    }

    public static Remark notForHold(Token found) {
        return Mistake.NOT_FOR_HOLD.at(found.span(), found.text());
    }

    public static Remark twice(Span span, String what) {
        return Mistake.WORD_TWICE.at(span, what);
    }

    public static Remark twoOfAKind(Token found, String before) {
        return twoOfAKind(found.span(), found.text(), before);
    }

    public static Remark twoOfAKind(Span span, String found, String before) {
        return Mistake.TWO_OF_A_KIND.at(span, found, before);
    }

    public static Remark badShares(Span span) {
        return Mistake.BAD_SHARES.at(span);
    }

    public static Remark badText(Span span) {
        return Mistake.BAD_WORDS.at(span, Direction.Words.LONGEST);
    }

    public static Remark noWay(Span span, String what, List<String> ways) {
        return Mistake.NO_WAY.at(span, what, Choice.ofWords(ways).orElseThrow());
    }

    public static Remark badBend(Span span) {
        return Mistake.BAD_BEND.at(span);
    }

    public static Remark nothingToRelease(Token word) {
        return Mistake.NOTHING_TO_RELEASE.at(word.span());
    }

    /** What is said of a chord, at fewer notes than two. */
    public static Remark chordOfOne(Span span, String words) {
        return Mistake.CHORD_OF_ONE.at(span, words);
    }

    public static Remark badTrill(Span span) {
        return Mistake.BAD_TRILL.at(span);
    }

    public static Remark badTouch(Span span) {
        return Mistake.BAD_TOUCH.at(span);
    }

    public static Remark badGrace(Span span) {
        return Mistake.BAD_GRACE.at(span);
    }

    public static Remark badFinger(Span span) {
        return Mistake.BAD_FINGER.at(span);
    }

    public static Remark badSpelling(Span span) {
        return Mistake.BAD_SPELLING.at(span);
    }

    public static Remark badUntil(Span span) {
        return Mistake.BAD_UNTIL.at(span);
    }

    /** @param names of what sounds there */
    public static Remark otherPitch(Span span, String name, Stream<String> names) {
        return Mistake.OTHER_PITCH.at(span, name).suggesting(names.map(other -> "as " + other));
    }

    public static Remark untilOutside(Span span, Fraction from, Meter meter) {
        return Mistake.UNTIL_OUTSIDE.at(span, Moment.at(from, meter));
    }

    public static Remark deadWithGrace(Span span) {
        return Mistake.DEAD_GRACE.at(span);
    }

    public static Remark deadWithHarmonic(Span span) {
        return Mistake.DEAD_HARMONIC.at(span);
    }

    public static Remark deadWithSpelling(Span span) {
        return Mistake.DEAD_SPELLING.at(span);
    }

    public static Remark deadWithTrill(Span span) {
        return Mistake.DEAD_TRILL.at(span);
    }

    public static Remark harmonicWithTrill(Span span) {
        return Mistake.TRILLED_HARMONIC.at(span);
    }

    public static Remark bendWithTrill(Span span) {
        return Mistake.TRILLED_BEND.at(span);
    }

    public static Remark nothingToHold(Span span) {
        return Mistake.NOTHING_TO_HOLD.at(span).suggesting("rest");
    }

    public static Remark holdOverSeam(Span span) {
        return Mistake.HOLD_OVER_REPEAT.at(span);
    }

    public static Remark stillSounding(Span span, String string, String until) {
        return Mistake.STILL_SOUNDING.at(span, string, until);
    }

    public static Remark stringTwice(Span span, String string) {
        return Mistake.STRING_TWICE.at(span, string);
    }

    public static Remark copyInCount(Span span) {
        return Mistake.COPY_IN_COUNT.at(span);
    }

    public static Remark noSource(Span span, String word) {
        return Mistake.NO_SOURCE.at(span, word).suggesting(word + " from 2");
    }
}
