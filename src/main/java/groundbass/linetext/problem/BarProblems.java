package groundbass.linetext.problem;

import groundbass.linetext.source.Token;
import groundbass.remark.Remark;
import groundbass.remark.Span;
import groundbass.score.Count;
import groundbass.score.Grid;
import groundbass.score.Meter;
import groundbass.score.Passes.Fault;
import groundbass.score.Roadmap;
import groundbass.text.Message;
import java.util.List;
import java.util.Optional;

/** What can be wrong with a bar as a whole: its head, its counts, its chords, its repeat signs. */
public final class BarProblems {
    private static final List<String> PARTS = List.of("over", "until", "=", "as");

    private BarProblems() {}

    public static Remark unknownPart(Token found) {
        return Mistake.UNKNOWN_BAR_PART.at(found.span(), found.text()).suggesting(Nearest.to(found.text(), PARTS));
    }

    public static Remark badCopy(Span span) {
        return Mistake.BAD_COPY.at(span);
    }

    public static Remark badCopyCounts(Span span) {
        return Mistake.BAD_COPY_COUNTS.at(span);
    }

    public static Remark badShift(Span span) {
        return Mistake.BAD_SHIFT.at(span);
    }

    /** Strings lie higher and lower, frets go up and down. */
    public static Remark badShiftWay(Span span, String howFar, String way, boolean ofStrings) {
        var ways = ofStrings ? List.of("higher", "lower") : List.of("up", "down");
        boolean upwards = List.of("up", "higher").contains(way);
        var meant = List.of("up", "higher", "down", "lower").contains(way)
                ? Optional.of(ways.get(upwards ? 0 : 1))
                : Nearest.to(way, ways);
        return Mistake.BAD_SHIFT.at(span).suggesting(meant.map(word -> howFar + " " + word));
    }

    /** @param places as they are typed */
    public static Remark shiftedOff(Span span, int bar, List<String> places, String names, int frets) {
        return Mistake.SHIFTED_OFF_NECK.at(span, String.join(", ", places), bar, names, frets);
    }

    /** Of a note that is taken over to another string. */
    public static Remark noSourceThere(Span span, String word) {
        return Mistake.NO_SOURCE.at(span, word);
    }

    public static Remark badUntil(Span span) {
        return Mistake.BAD_BAR_UNTIL.at(span);
    }

    public static Remark noChord(Span span) {
        return Mistake.NO_CHORD.at(span);
    }

    public static Remark unknownChord(Token found) {
        return Mistake.UNKNOWN_CHORD
                .at(found.span(), found.text(), ChordWords.known())
                .suggesting(GermanNames.asWritten(found.text()).or(() -> ChordWords.near(found.text())));
    }

    public static Remark badChordCount(Span span) {
        return Mistake.BAD_CHORD_COUNT.at(span);
    }

    public static Remark chordOutside(Span span, String when, int bar) {
        return Mistake.CHORD_OUTSIDE_BAR.at(span, when, bar);
    }

    public static Remark chordsTogether(Span span, String when) {
        return Mistake.CHORDS_TOGETHER.at(span, when);
    }

    public static Remark wrongNumber(Span span, int found, int expected) {
        return Mistake.WRONG_BAR_NUMBER.at(span, found, expected).suggesting("bar " + expected);
    }

    public static Remark pickupNotFirst(Span span, int expected) {
        return Mistake.PICKUP_NOT_FIRST.at(span, expected).suggesting("bar " + expected);
    }

    public static Remark pickupFromOne(Span span) {
        return Mistake.PICKUP_FROM_ONE.at(span).suggesting("bar 1");
    }

    public static Remark pickupEmpty(Span span) {
        return Mistake.PICKUP_EMPTY.at(span);
    }

    public static Remark pickupUntil(Span span) {
        return Mistake.PICKUP_UNTIL.at(span);
    }

    public static Remark untilOutside(Span span, String found, Meter meter) {
        return Mistake.BAR_UNTIL_OUTSIDE.at(span, found, meter, meter.counts());
    }

    public static Remark noSuchBar(Span span, int found, int here) {
        return Mistake.NO_SUCH_BAR.at(span, found, here);
    }

    public static Remark copyCountsOutside(Span span, int bar, Meter meter) {
        return Mistake.COPY_COUNTS_OUTSIDE.at(span, bar, meter, meter.counts());
    }

    public static Remark countOutside(Span span, Count found, Meter meter, int bar) {
        return Mistake.COUNT_OUTSIDE_BAR.at(span, found, meter, bar, meter.counts());
    }

    public static Remark countOutsideShort(Span span, Count found, String from, String to, int bar) {
        return Mistake.COUNT_OUTSIDE_SHORT_BAR.at(span, found, from, to, bar);
    }

    public static Remark backwards(Span span) {
        return Mistake.SPAN_BACKWARDS.at(span);
    }

    public static Remark countTwice(Span span, Count found, Span first) {
        return Mistake.COUNT_TWICE.at(span, found, first.line());
    }

    public static Remark outOfOrder(Span span, Count found, Count before) {
        return Mistake.COUNTS_OUT_OF_ORDER.at(span, found, before);
    }

    public static Remark overlap(Span span, Count found, String other) {
        return Mistake.COUNTS_OVERLAP.at(span, found, other);
    }

    public static Remark unsaid(Span span, int bar, Message what, String counts) {
        return Mistake.BEAT_UNSAID.at(span, bar, what, counts);
    }

    public static Remark tooFine(Span span, int bar) {
        return Mistake.TOO_FINELY_DIVIDED.at(span, bar, Grid.FINEST);
    }

    public static Remark noBar(Span span) {
        return Mistake.NO_BAR.at(span).suggesting("bar");
    }

    public static Remark nothingBefore(Span span, String what) {
        return Mistake.NO_BAR_BEFORE.at(span, what);
    }

    public static Remark nothingAfter(Span span) {
        return Mistake.NO_BAR_AFTER.at(span);
    }

    public static Remark noBars(Span span) {
        return Mistake.NO_BARS.at(span);
    }

    public static Remark badRepeat(Span span) {
        return Mistake.BAD_REPEAT.at(span);
    }

    public static Remark badTimes(Span span, int most) {
        return Mistake.BAD_REPEAT_TIMES.at(span, most);
    }

    public static Remark badEnding(Span span, int most) {
        return Mistake.BAD_ENDING.at(span, most);
    }

    public static Remark signTwice(Span span, Span first) {
        return Mistake.SIGN_SAID_TWICE.at(span, first.line());
    }

    public static Remark badToCoda(Span span) {
        return Mistake.BAD_TO_CODA.at(span).suggesting("to coda");
    }

    public static Remark badJump(Span span, Roadmap.From from) {
        String words = new Roadmap.Jump(from, Roadmap.Until.END).words();
        return Mistake.BAD_JUMP.at(span, words).suggesting(words);
    }

    public static Remark of(Fault.Kind kind, Span span) {
        return mistake(kind).at(span);
    }

    private static Mistake mistake(Fault.Kind kind) {
        return switch (kind) {
            case START_INSIDE_STRETCH -> Mistake.START_INSIDE_STRETCH;
            case START_WITHOUT_END -> Mistake.START_WITHOUT_END;
            case ENDING_INSIDE_ENDING -> Mistake.ENDING_INSIDE_ENDING;
            case END_WITHOUT_ENDING -> Mistake.END_WITHOUT_ENDING;
            case ENDING_NOT_CLOSED -> Mistake.ENDING_NOT_CLOSED;
            case PASSES_NOT_COVERED -> Mistake.PASSES_NOT_COVERED;
            case TIMES_DISAGREE -> Mistake.TIMES_DISAGREE;
            case REPEAT_END_MISPLACED -> Mistake.REPEAT_END_MISPLACED;
            case JUMP_SIGN_TWICE -> Mistake.JUMP_SIGN_TWICE;
            case NO_SEGNO -> Mistake.NO_SEGNO;
            case NO_FINE -> Mistake.NO_FINE;
            case NO_CODA -> Mistake.NO_CODA;
            case NO_JUMP -> Mistake.NO_JUMP;
            case JUMP_INSIDE_REPEAT -> Mistake.JUMP_INSIDE_REPEAT;
            case NEVER_PLAYED -> Mistake.NEVER_PLAYED;
        };
    }
}
