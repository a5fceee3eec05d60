package groundbass.linetext.problem;

import groundbass.linetext.source.Span;
import groundbass.linetext.source.Token;
import groundbass.score.Count;
import groundbass.score.Grid;
import groundbass.score.Meter;
import groundbass.score.Passes.Fault;
import groundbass.score.Roadmap;
import java.util.List;

/** What can be wrong with a bar as a whole: its head, its counts, its chords, its repeat signs. */
public final class BarProblems {
    private static final List<String> PARTS = List.of("over", "until", "=");

    private BarProblems() {}

    public static Problem unknownPart(Token found) {
        return Problem.error(
                        "unknown-bar-part",
                        found.span(),
                        "'" + found.text()
                                + "' is not understood here; after 'bar' and its number come '= bar N', 'until COUNT' or"
                                + " 'over CHORD'.")
                .suggesting(Nearest.to(found.text(), PARTS));
    }

    public static Problem badCopy(Span span) {
        return Problem.error(
                "bad-copy",
                span,
                "after '=' expected the bar to take over, as in 'bar 3 = bar 2' or '= bar 2 counts 3-4'.");
    }

    public static Problem badCopyCounts(Span span) {
        return Problem.error("bad-copy-counts", span, "after 'counts' expected whole beats, as in 'counts 3-4'.");
    }

    public static Problem badUntil(Span span) {
        return Problem.error(
                "bad-until", span, "after 'until' expected the count where the bar ends, as in 'bar 8 until 3'.");
    }

    public static Problem noChord(Span span) {
        return Problem.error("no-chord", span, "expected a chord here, as in 'over Am7, D9 at 3'.");
    }

    public static Problem unknownChord(Token found) {
        return Problem.error(
                        "unknown-chord",
                        found.span(),
                        "'" + found.text() + "' is no chord known here; a chord is N.C. or a root (C, F#, Bb), then "
                                + ChordWords.known() + ", then a bass note as in C/E.")
                .suggesting(GermanNames.asWritten(found.text()).or(() -> ChordWords.near(found.text())));
    }

    public static Problem badChordCount(Span span) {
        return Problem.error("bad-chord-count", span, "after 'at' expected a count, as in 'D9 at 3'.");
    }

    public static Problem chordOutside(Span span, String when, int bar) {
        return Problem.error("chord-outside-bar", span, "count " + when + " lies outside bar " + bar + ".");
    }

    public static Problem chordsTogether(Span span, String when) {
        return Problem.error(
                "chords-together",
                span,
                "two chords begin at count " + when + "; say where this one begins, as in 'D9 at 3'.");
    }

    public static Problem wrongNumber(Span span, int found, int expected) {
        return Problem.error(
                        "wrong-bar-number",
                        span,
                        "this is bar " + expected + ", not " + found + "; mend the number or leave it out.")
                .suggesting("bar " + expected);
    }

    public static Problem pickupNotFirst(Span span, int expected) {
        return Problem.error(
                        "pickup-not-first", span, "bar 0 is a pickup and stands first; this is bar " + expected + ".")
                .suggesting("bar " + expected);
    }

    public static Problem pickupFromOne(Span span) {
        return Problem.error(
                        "pickup-from-one",
                        span,
                        "a pickup begins after count 1; a bar that begins at 1 is bar 1, or say its first count later.")
                .suggesting("bar 1");
    }

    public static Problem pickupEmpty(Span span) {
        return Problem.error(
                "pickup-empty",
                span,
                "a pickup begins at its first count, and this one has none; it is read as a whole bar.");
    }

    public static Problem pickupUntil(Span span) {
        return Problem.error("pickup-until", span, "a pickup lasts to the end of its bar; take 'until' out.");
    }

    public static Problem untilOutside(Span span, String found, Meter meter) {
        return Problem.error(
                "bar-until-outside",
                span,
                "a bar of " + meter + " cannot be cut at " + found
                        + "; it ends after count 1 and at the latest at the end" + " of count " + meter.counts() + ".");
    }

    public static Problem noSuchBar(Span span, int found, int here) {
        return Problem.error(
                "no-such-bar",
                span,
                "bar " + found + " does not stand before bar " + here + "; only earlier bars can be copied.");
    }

    public static Problem copyCountsOutside(Span span, int bar, Meter meter) {
        return Problem.error(
                "copy-counts-outside",
                span,
                "bar " + bar + " is counted in " + meter + ", 1 to " + meter.counts()
                        + "; name counts of it from the start of one beat to the end of the same or a later one.");
    }

    public static Problem countOutside(Span span, Count found, Meter meter, int bar) {
        return Problem.error(
                "count-outside-bar",
                span,
                "count " + found + " in bar " + bar + "; a bar of " + meter + " is counted 1 to " + meter.counts()
                        + ".");
    }

    public static Problem countOutsideShort(Span span, Count found, String from, String to, int bar) {
        return Problem.error(
                "count-outside-bar",
                span,
                "count " + found + " in bar " + bar + ", which begins at " + from + " and ends at " + to + ".");
    }

    public static Problem backwards(Span span) {
        return Problem.error("span-backwards", span, "a span of counts runs forward, as in 1-2.");
    }

    public static Problem countTwice(Span span, Count found, Span first) {
        return Problem.error(
                "count-twice",
                span,
                "count " + found + " was said in line " + first.line()
                        + " already; put both into one line with '+' or ','.");
    }

    public static Problem outOfOrder(Span span, Count found, Count before) {
        return Problem.error(
                "counts-out-of-order",
                span,
                "count " + found + " stands after count " + before
                        + "; write counts in the order in which they sound.");
    }

    public static Problem overlap(Span span, Count found, String other) {
        return Problem.error(
                "counts-overlap",
                span,
                "count " + found + " lies inside " + other + ", which fills its beats already.");
    }

    public static Problem unsaid(Span span, int bar, String what, String counts) {
        return Problem.error(
                "beat-unsaid",
                span,
                "bar " + bar + " leaves " + what + " unsaid; write '" + counts + "  rest', '" + counts
                        + "  hold', or let the line before it span it.");
    }

    public static Problem tooFine(Span span, int bar) {
        return Problem.error(
                "too-finely-divided",
                span,
                "the times of bar " + bar + " have no common division of " + Grid.FINEST
                        + " parts or fewer to a whole note; this one is left out.");
    }

    public static Problem noBar(Span span) {
        return Problem.error(
                        "no-bar",
                        span,
                        "a count line belongs to a bar; begin the bar with a line of its own before it.")
                .suggesting("bar");
    }

    public static Problem nothingBefore(Span span, String what) {
        return Problem.error("no-bar-before", span, "'" + what + "' stands after a bar, and there is none before it.");
    }

    public static Problem nothingAfter(Span span) {
        return Problem.error(
                "no-bar-after", span, "this stands before a bar, and none follows; take it out or write the bar.");
    }

    public static Problem noBars(Span span) {
        return Problem.error("no-bars", span, "there is no bar here; a line needs at least one, such as 'bar 1'.");
    }

    public static Problem badRepeat(Span span) {
        return Problem.error(
                "bad-repeat",
                span,
                "expected 'repeat start' before a bar or 'repeat end' after one (x3 for three times).");
    }

    public static Problem badTimes(Span span, int most) {
        return Problem.error("bad-repeat-times", span, "how often a repeat is played is x2 to x" + most + ".");
    }

    public static Problem badEnding(Span span, int most) {
        return Problem.error(
                "bad-ending",
                span,
                "expected 'ending 1' or 'ending 1-3' before a bar (passes 1 to " + most
                        + ") or 'ending end' after one.");
    }

    public static Problem signTwice(Span span, Span first) {
        return Problem.error("said-twice", span, "this was said in line " + first.line() + " already; take one out.");
    }

    public static Problem badToCoda(Span span) {
        return Problem.error("bad-to-coda", span, "after 'to' expected 'coda'.").suggesting("to coda");
    }

    public static Problem badJump(Span span, Roadmap.From from) {
        String words = new Roadmap.Jump(from, Roadmap.Until.END).words();
        return Problem.error(
                        "bad-jump",
                        span,
                        "expected '" + words + "', '" + words + " al fine' or '" + words + " al coda'.")
                .suggesting(words);
    }

    public static Problem of(Fault.Kind kind, Span span) {
        return Problem.error("repeats-disagree", span, sentence(kind) + " All signs of this bar are left out.");
    }

    public static Problem ofJump(Fault.Kind kind, Span span) {
        return Problem.error("jumps-disagree", span, sentence(kind) + " The signs of jumps at this bar are left out.");
    }

    private static String sentence(Fault.Kind kind) {
        return switch (kind) {
            case START_INSIDE_STRETCH -> "a repeat starts inside one that has not ended; write 'repeat end' before it.";
            case START_WITHOUT_END -> "this repeat never ends; write 'repeat end' after its last bar.";
            case ENDING_INSIDE_ENDING ->
                "an ending begins inside another; write 'ending end' after the last bar of the one before.";
            case END_WITHOUT_ENDING -> "an ending ends here that never began; write 'ending 1' before its first bar.";
            case ENDING_NOT_CLOSED -> "this ending never ends; write 'ending end' after its last bar.";
            case PASSES_NOT_COVERED ->
                "the endings of a repeat name each pass once and in order: ending 1, then ending 2, or ending 1-3, then"
                        + " ending 4.";
            case TIMES_DISAGREE ->
                "the number of times is not the number of passes that the endings name; leave it out or mend it.";
            case REPEAT_END_MISPLACED ->
                "every ending but the last is closed by 'repeat end' in the same bar, and the last one is not.";
            case JUMP_SIGN_TWICE ->
                "a line has one jump, one segno, one coda, one 'to coda' and one fine; take one out.";
            case NO_SEGNO -> "the sign stands at no earlier bar; write 'segno' before the bar to go back to.";
            case NO_FINE -> "no end comes before this jump; write 'fine' after the bar to end with.";
            case NO_CODA ->
                "write 'to coda' after an earlier bar, where the coda is to be gone to, and 'coda' before the bar after"
                        + " this jump.";
            case NO_JUMP ->
                "no jump asks for this sign; write the jump after its bar, as in 'dal segno al coda' or 'da capo al"
                        + " fine'.";
            case JUMP_INSIDE_REPEAT ->
                "after a jump repeats are played once, with their last ending; put this sign where the repeat ends, or"
                        + " outside it.";
            case NEVER_PLAYED -> "what stands after a jump al fine is never played; put the jump after the last bar.";
        };
    }
}
