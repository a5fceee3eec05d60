package groundbass.linetext.problem;

import groundbass.linetext.source.Keyword;
import groundbass.linetext.source.Numbers;
import groundbass.linetext.source.Span;
import groundbass.linetext.source.Token;
import groundbass.score.Place;
import groundbass.score.Tempo;
import groundbass.score.Tuning;
import groundbass.theory.Key;
import groundbass.theory.Letter;
import groundbass.theory.Mode;
import groundbass.theory.NoteName;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** What can be wrong with the settings at the head or before a bar. */
public final class HeadProblems {
    private static final Pattern MINOR = Pattern.compile("([A-G][#b]?)(m|mi|min)");

    private HeadProblems() {}

    public static Problem noValue(Span span, Keyword word) {
        return Problem.error(
                "no-value", span, "nothing stands behind '" + word + "'; write its value on the same line.");
    }

    public static Problem badText(Span span, Keyword word, int most) {
        return Problem.error(
                "bad-text",
                span,
                "the " + word + " is one line of at most " + most + " characters without control characters.");
    }

    public static Problem unknownForm(Span span, int known) {
        return Problem.error(
                "unknown-form",
                span,
                "this program reads form " + known + " of line text; a later form may mean other things.");
    }

    public static Problem noTonic(Token found) {
        return Problem.error(
                        "no-tonic",
                        found.span(),
                        "'" + found.text() + "' is no tonic; write a key as 'A dorian' or 'Bb major'.")
                .suggesting(minor(found.text()).or(() -> GermanNames.asWritten(found.text())));
    }

    /** {@code Am} and {@code F#min} for {@code A minor} and {@code F# minor}. */
    private static Optional<String> minor(String text) {
        var minor = MINOR.matcher(text);
        return minor.matches() ? Optional.of(minor.group(1) + " " + Mode.MINOR) : Optional.empty();
    }

    public static Problem noMode(Span span, NoteName tonic, List<String> modes) {
        return Problem.error(
                        "no-mode",
                        span,
                        "the key on " + tonic + " has no mode; expected one of: " + String.join(" ", modes) + ".")
                .suggesting(tonic + " major or " + tonic + " minor");
    }

    public static Problem noSignature(Span span, NoteName tonic, Mode mode) {
        String others = Stream.of(-1, 0, 1)
                .flatMap(alteration -> Arrays.stream(Letter.values()).map(letter -> new NoteName(letter, alteration)))
                .filter(name -> name.pitchClass() == tonic.pitchClass() && Key.isWritable(name, mode))
                .map(name -> name + " " + mode)
                .collect(Collectors.joining(" or "));
        return Problem.error(
                        "no-signature",
                        span,
                        tonic + " " + mode + " would need more than " + Key.MOST_FIFTHS + " sharps or flats.")
                .suggesting(others);
    }

    public static Problem tempoOutOfRange(Span span, int found) {
        return Problem.error(
                "tempo-out-of-range",
                span,
                "tempo " + found + "; a tempo is " + Tempo.SLOWEST + " to " + Tempo.FASTEST + " beats a minute.");
    }

    public static Problem slowingWithoutTo(Span span) {
        return Problem.error("slowing-without-to", span, "expected 'to' and a tempo: slowing to 72.");
    }

    public static Problem newWhat(Token found, List<String> places) {
        return Problem.error(
                        "new-what",
                        found.span(),
                        "'" + found.text() + "' is nothing that a bar can begin on the sheet; expected one of: "
                                + String.join(" ", places) + ", as in 'new system'.")
                .suggesting(Nearest.to(found.text(), places));
    }

    public static Problem unknownBeat(Span span, String found, List<String> names) {
        return Problem.error(
                        "unknown-beat",
                        span,
                        "'" + found + "' is no length that a tempo counts; expected one of: " + String.join(" ", names)
                                + ", 'dotted' before it, or a fraction such as 5/8.")
                .suggesting(Nearest.to(found, names));
    }

    public static Problem unknownFeel(Span span) {
        return Problem.error(
                "unknown-feel",
                span,
                "a feel is 'straight', 'swing 8ths 2:1' or 'swing 16ths 3:2', with 'half-time' after it where wanted.");
    }

    public static Problem badSwing(Span span) {
        return Problem.error(
                        "bad-swing", span, "swing needs '8ths' or '16ths' and a ratio from 1:1 to 9:1, long to short.")
                .suggesting("swing 8ths 2:1");
    }

    public static Problem fretsOutOfRange(Span span) {
        return Problem.error("frets-out-of-range", span, "a neck has 1 to " + Place.Fretted.MOST_FRETS + " frets.");
    }

    public static Problem noNumber(Span span, Keyword word) {
        return Problem.error("no-number", span, "'" + word + "' needs a number here.");
    }

    public static Problem badMeter(Token found) {
        return Problem.error(
                        "bad-meter",
                        found.span(),
                        "a meter is two figures such as 4/4 or 12/8; the lower is 1, 2, 4, 8 or 16, the upper 1 to 32.")
                .suggesting(Numbers.whole(found.text())
                        .filter(counts -> counts >= 2 && counts <= 6)
                        .map(counts -> counts + "/4"));
    }

    public static Problem badGroups(Span span, int counts) {
        return Problem.error(
                "bad-groups", span, "the groups must add up to " + counts + ", written as in 7/8 (2+2+3).");
    }

    public static Problem badString(Token found) {
        return Problem.error(
                "bad-string",
                found.span(),
                "'" + found.text()
                        + "' is no string; write names from low to high: E A D G, an octave where it is needed"
                        + " (A0), or E=D where the E string sounds D.");
    }

    public static Problem tooManyStrings(Span span) {
        return Problem.error("too-many-strings", span, "a neck has at most " + Tuning.MOST_STRINGS + " strings.");
    }

    public static Problem saidTwice(Span span, Keyword word, Span first) {
        return Problem.error(
                "said-twice", span, "the " + word + " was said in line " + first.line() + " already; take one out.");
    }

    public static Problem onlyAtHead(Span span, Keyword word) {
        return Problem.error(
                "only-at-head", span, "'" + word + "' holds for the whole line and stands before the first bar.");
    }
}
