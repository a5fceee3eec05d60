package groundbass.linetext.problem;

import groundbass.remark.Remark;
import groundbass.remark.Span;
import groundbass.text.Message;
import java.util.Arrays;
import java.util.Locale;

/**
 * Every mistake that a text can have, each with its sentence in the message bundles and its code for programs. Several
 * sentences share a code where a program need not tell them apart.
 */
public enum Mistake {
    TOO_MANY_PROBLEMS,
    LINE_TOO_LONG,
    TOO_MANY_BARS,
    TOO_MANY_EVENTS,
    TOO_MANY_NOTES,
    TOO_MANY_DIRECTIONS,
    COMMENT_TOO_CLOSE,
    SEMICOLON,
    QUOTE_NOT_CLOSED,
    UNKNOWN_LINE,
    LEFT_OVER,
    NO_VALUE,
    BAD_SETTING_TEXT("bad-text"),
    UNKNOWN_FORM,
    NO_TONIC,
    NO_MODE,
    UNKNOWN_MODE,
    UNKNOWN_STYLE,
    NO_SIGNATURE,
    TEMPO_OUT_OF_RANGE,
    SLOWING_WITHOUT_TO,
    NEW_WHAT,
    UNKNOWN_BEAT,
    UNKNOWN_FEEL,
    BAD_SWING,
    FRETS_OUT_OF_RANGE,
    NO_NUMBER,
    BAD_METER,
    BAD_GROUPS,
    BAD_STRING,
    TOO_MANY_STRINGS,
    SETTING_SAID_TWICE("said-twice"),
    ONLY_AT_HEAD,
    UNKNOWN_BAR_PART,
    BAD_COPY,
    BAD_COPY_COUNTS,
    BAD_SHIFT,
    SHIFTED_OFF_NECK,
    COPY_IN_COUNT,
    BAD_BAR_UNTIL("bad-until"),
    NO_CHORD,
    UNKNOWN_CHORD,
    BAD_CHORD_COUNT,
    CHORD_OUTSIDE_BAR,
    CHORDS_TOGETHER,
    WRONG_BAR_NUMBER,
    PICKUP_NOT_FIRST,
    PICKUP_FROM_ONE,
    PICKUP_EMPTY,
    PICKUP_UNTIL,
    BAR_UNTIL_OUTSIDE,
    NO_SUCH_BAR,
    COPY_COUNTS_OUTSIDE,
    COUNT_OUTSIDE_BAR,
    COUNT_OUTSIDE_SHORT_BAR("count-outside-bar"),
    SPAN_BACKWARDS,
    COUNT_TWICE,
    COUNTS_OUT_OF_ORDER,
    COUNTS_OVERLAP,
    BEAT_UNSAID,
    TOO_FINELY_DIVIDED,
    NO_BAR,
    NO_BAR_BEFORE,
    NO_BAR_AFTER,
    NO_BARS,
    BAD_REPEAT,
    BAD_REPEAT_TIMES,
    BAD_ENDING,
    BAD_TO_CODA,
    BAD_JUMP,
    SIGN_SAID_TWICE("said-twice"),
    START_INSIDE_STRETCH("repeats-disagree"),
    START_WITHOUT_END("repeats-disagree"),
    ENDING_INSIDE_ENDING("repeats-disagree"),
    END_WITHOUT_ENDING("repeats-disagree"),
    ENDING_NOT_CLOSED("repeats-disagree"),
    PASSES_NOT_COVERED("repeats-disagree"),
    TIMES_DISAGREE("repeats-disagree"),
    REPEAT_END_MISPLACED("repeats-disagree"),
    JUMP_SIGN_TWICE("jumps-disagree"),
    NO_SEGNO("jumps-disagree"),
    NO_FINE("jumps-disagree"),
    NO_CODA("jumps-disagree"),
    NO_JUMP("jumps-disagree"),
    JUMP_INSIDE_REPEAT("jumps-disagree"),
    NEVER_PLAYED("jumps-disagree"),
    BAD_COUNT,
    NO_EVENT,
    EMPTY_EVENT,
    TOO_MANY_SHARES,
    UNREADABLE,
    REST_WITH_PLACES,
    NO_PLACE,
    NO_SUCH_PLACE,
    APART,
    NO_COMMA,
    PLUS_FOR_AND,
    NO_FRET,
    NO_SUCH_STRING,
    AMBIGUOUS_STRING,
    FRET_OFF_NECK,
    UNKNOWN_WORD,
    NOT_FOR_REST,
    NOT_FOR_HOLD,
    WORD_TWICE,
    TWO_OF_A_KIND,
    CHORD_OF_ONE,
    BAD_SHARES,
    BAD_WORDS("bad-text"),
    NO_WAY,
    BAD_BEND,
    NOTHING_TO_RELEASE,
    BAD_TRILL,
    BAD_TOUCH,
    BAD_GRACE,
    BAD_FINGER,
    BAD_SPELLING,
    BAD_UNTIL,
    OTHER_PITCH,
    UNTIL_OUTSIDE,
    DEAD_GRACE("dead-string"),
    DEAD_HARMONIC("dead-string"),
    DEAD_SPELLING("dead-string"),
    DEAD_TRILL("dead-string"),
    TRILLED_HARMONIC("bad-trill"),
    TRILLED_BEND("bad-trill"),
    NOTHING_TO_HOLD,
    HOLD_OVER_REPEAT,
    STILL_SOUNDING,
    STRING_TWICE,
    NO_SOURCE;

    private final String code;
    private final String key;

    Mistake() {
        this.code = word();
        this.key = "linetext." + code;
    }

    Mistake(String code) {
        this.code = code;
        this.key = "linetext." + word();
    }

    private String word() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /** The key of its sentence in the message bundles. */
    public String messageKey() {
        return key;
    }

    /** @param args what fills its sentence; what is neither a number nor a message as it is written */
    Remark at(Span span, Object... args) {
        var filling = Arrays.stream(args)
                .map(arg -> arg instanceof Number || arg instanceof Message ? arg : arg.toString())
                .toArray();
        return Remark.error(code, span, Message.of(key, filling));
    }
}
