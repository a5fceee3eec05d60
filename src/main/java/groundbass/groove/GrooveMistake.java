package groundbass.groove;

import groundbass.remark.Remark;
import groundbass.remark.Span;
import groundbass.text.Message;
import java.util.Locale;

/** Every mistake that a groove's text can have, each with its code for programs and its sentence in the bundles. */
public enum GrooveMistake {
    TOO_MANY_LINES,
    LINE_TOO_LONG,
    NO_ROW,
    UNKNOWN_WORD,
    BAD_NAME,
    BAD_METER,
    BAD_COUNTS,
    BAD_UNIT,
    BAD_GROUPS,
    BAD_COLUMNS,
    BAD_STROKE,
    BAD_CHORD_STROKE,
    BAD_BACK,
    BAD_FOLLOW,
    ROW_TWICE,
    UNEVEN_ROW,
    OTHER_LENGTH;

    private final String code = name().toLowerCase(Locale.ROOT).replace('_', '-');

    /** The key of its sentence in the message bundles. */
    public String messageKey() {
        return "groove." + code;
    }

    Remark at(Span span, Object... args) {
        return Remark.error(code, span, Message.of(messageKey(), args));
    }
}
