package groundbass.linetext.problem;

import groundbass.linetext.source.Limits;
import groundbass.linetext.source.Moment;
import groundbass.linetext.source.Span;
import groundbass.linetext.source.Token;
import groundbass.score.Direction;
import groundbass.score.Fraction;
import groundbass.score.Meter;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.IntStream;

/** What can be wrong with a count line, an event, a place or a word. */
public final class EventProblems {
    private static final Pattern FRET_FIRST = Pattern.compile("(\\d{1,2}|x)([A-G][#b]{0,2})");

    private EventProblems() {}

    public static Problem badCount(Token found) {
        var first = IntStream.range(0, found.text().length())
                .takeWhile(i -> Character.isDigit(found.text().charAt(i)))
                .count();
        return Problem.error(
                        "bad-count",
                        found.span(),
                        "'" + found.text()
                                + "' is no count; counts are a number from 1 to 99, alone or with e, & or a, and"
                                + " spans of them such as 1-2.")
                .suggesting(Optional.of(found.text().substring(0, (int) Math.min(2, first)))
                        .filter(number -> !number.startsWith("0"))
                        .map(number -> number + ", " + number + "e, " + number + "& or " + number + "a"));
    }

    public static Problem noEvents(Span span) {
        return Problem.error("no-event", span, "nothing is played on this count; write a place, 'rest' or 'hold'.")
                .suggesting("rest");
    }

    public static Problem emptyEvent(Span span) {
        return Problem.error(
                "empty-event", span, "no event stands between these commas; write one or take a comma out.");
    }

    public static Problem tooManyShares(Span span) {
        return Problem.error(
                "too-many-shares",
                span,
                "the events of this line ask for more than " + Limits.MOST_SHARES + " shares; it is read as a rest.");
    }

    public static Problem unreadable(Token found) {
        return Problem.error(
                "unreadable",
                found.span(),
                "'" + found.text()
                        + "' is not understood here; write a comma before a new event, + before a new place.");
    }

    public static Problem restWithPlaces(Span span) {
        return Problem.error("rest-with-places", span, "a rest and a place cannot sound together; take one out.");
    }

    public static Problem noPlace(Span span) {
        return Problem.error("no-place", span, "expected a place such as A3 or Ax, or 'rest' or 'hold'.");
    }

    public static Problem noSuchPlace(Token found, Optional<String> nearest) {
        return Problem.error(
                        "no-such-place",
                        found.span(),
                        "'" + found.text()
                                + "' is no place; expected a string and a fret (A3), a dead string (Ax), 'rest' or"
                                + " 'hold'.")
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

    public static Problem apart(Span span, String together) {
        return Problem.error("apart", span, "a string and its fret are written together, without a space.")
                .suggesting(together);
    }

    public static Problem noComma(Token found) {
        return Problem.error(
                        "no-comma",
                        found.span(),
                        "a comma stands before a new event, + before another place of the same one.")
                .suggesting(", " + found.text() + " or + " + found.text());
    }

    public static Problem plusForAnd(Span span, String count) {
        return Problem.error("plus-for-and", span, "the half of a count is written &, since + joins places.")
                .suggesting(count + "&");
    }

    public static Problem noFret(Token found) {
        return Problem.error(
                "no-fret",
                found.span(),
                "string " + found.text() + " has no fret here; write " + found.text() + "0 for the open string, "
                        + found.text() + "x for a dead one, '" + found.text() + " hold' to let it go on.");
    }

    public static Problem noSuchString(Span span, String found, List<String> strings) {
        return Problem.error(
                "no-such-string",
                span,
                "no string " + found + "; this neck has, low to high: " + String.join(" ", strings) + ".");
    }

    public static Problem ambiguousString(Span span, String found, String offers) {
        return Problem.error(
                        "ambiguous-string",
                        span,
                        "several strings are called " + found + "; count strings from 1, the highest.")
                .suggesting(offers);
    }

    public static Problem fretOffNeck(Span span, String fret, String string, int frets) {
        return Problem.error(
                        "fret-off-neck",
                        span,
                        "fret " + fret + " on string " + string + "; this neck has frets 0 to " + frets + ".")
                .suggesting(Frets.near(fret, frets));
    }

    public static Problem unknownWord(Token found, List<String> known) {
        return Problem.error(
                        "unknown-word",
                        found.span(),
                        "'" + found.text() + "' is no word for a place; expected one of: " + String.join(" ", known)
                                + ", or a text in quotes.")
                .suggesting(OtherNames.of(found.text()).or(() -> Nearest.to(found.text(), known)));
    }

    public static Problem notForRest(Token found) {
        return Problem.error(
                "not-for-rest",
                found.span(),
                "'" + found.text()
                        + "' says nothing of a rest; only shares, a loudness or a text in quotes can follow it.");
    }

    public static Problem notForHold(Token found) {
        return Problem.error(
                "not-for-hold",
                found.span(),
                "'" + found.text()
                        + "' says nothing of a held sound; only shares, 'until', a loudness or a text in quotes"
                        + " can follow it.");
    }

    public static Problem twice(Span span, String what) {
        return Problem.error("word-twice", span, "'" + what + "' is said twice; take one out.");
    }

    public static Problem twoOfAKind(Token found, String before) {
        return Problem.error(
                "two-of-a-kind",
                found.span(),
                "'" + found.text() + "' cannot stand beside '" + before + "'; the first one is kept.");
    }

    public static Problem badShares(Span span) {
        return Problem.error("bad-shares", span, "after * expected how many shares the event has, as in A3*2.");
    }

    public static Problem badText(Span span) {
        return Problem.error(
                "bad-text",
                span,
                "a text above the staff is one line of 1 to " + Direction.Words.LONGEST + " characters.");
    }

    public static Problem noWay(Span span, String what, List<String> ways) {
        return Problem.error("no-way", span, "after '" + what + "' expected " + String.join(" or ", ways) + ".");
    }

    public static Problem badBend(Span span) {
        return Problem.error(
                "bad-bend",
                span,
                "how far a string is bent is said in whole tones by quarters, 1/4 to 2, as in bend 1/2.");
    }

    public static Problem badTouch(Span span) {
        return Problem.error("bad-touch", span, "after 'harmonic at' expected the fret where the string is touched.");
    }

    public static Problem badGrace(Span span) {
        return Problem.error(
                "bad-grace", span, "after 'from' expected the fret of the grace note, as in 'hammer from 4'.");
    }

    public static Problem badFinger(Span span) {
        return Problem.error("bad-finger", span, "after 'with' expected a fretting finger, 1 (index) to 4 (little).");
    }

    public static Problem badSpelling(Span span) {
        return Problem.error("bad-spelling", span, "after 'as' expected the name to print, as in 'as Ab'.");
    }

    public static Problem badUntil(Span span) {
        return Problem.error("bad-until", span, "after 'until' expected a count of this bar, or 'end'.");
    }

    public static Problem otherPitch(Span span, String name, String names) {
        return Problem.error("other-pitch", span, name + " is another pitch than what sounds here.")
                .suggesting(names);
    }

    public static Problem untilOutside(Span span, Fraction from, Meter meter) {
        return Problem.error(
                "until-outside",
                span,
                "this sound begins at count " + Moment.at(from, meter)
                        + " and can last to the end of its bar at most; say a"
                        + " later count, or 'until end' and hold it on in the next bar.");
    }

    public static Problem deadWith(Span span, String what) {
        return Problem.error("dead-string", span, "a dead string has no pitch, so it takes no " + what + ".");
    }

    public static Problem nothingToHold(Span span) {
        return Problem.error(
                        "nothing-to-hold",
                        span,
                        "nothing sounds up to here that could be held on; write a place or 'rest'.")
                .suggesting("rest");
    }

    public static Problem holdOverSeam(Span span) {
        return Problem.error(
                "hold-over-repeat",
                span,
                "a sound cannot be held across a repeat sign, since another bar is played before this one on some pass;"
                        + " strike it again.");
    }

    public static Problem stillSounding(Span span, String string, String until) {
        return Problem.error(
                "still-sounding",
                span,
                "string " + string + " still sounds until count " + until + "; it ends here now. Mend its 'until'.");
    }

    public static Problem stringTwice(Span span, String string) {
        return Problem.error(
                "string-twice", span, "string " + string + " is played twice at once; the first place is kept.");
    }

    public static Problem noSource(Span span, String word) {
        return Problem.error(
                        "no-source",
                        span,
                        "'" + word
                                + "' comes from the note before it on the same string, and there is none; pluck it, or name"
                                + " the fret it comes from.")
                .suggesting(word + " from 2");
    }
}
