package groundbass.engraving.options;

import groundbass.score.Arrival;
import groundbass.score.Ornaments.Spread;
import groundbass.score.Technique;

/** What a legend can explain. */
public enum Sign {
    SLAP,
    POP,
    THUMB,
    FINGER,
    INDEX,
    MIDDLE,
    THUMB_DOWN,
    THUMB_UP,
    PICK,
    PLUCK,
    TAP,
    MUTE,
    RAKE,
    LEFT_HAND,
    HAMMER,
    PULL,
    SLIDE,
    SLIDE_IN,
    SLIDE_OFF,
    DEAD,
    GHOST,
    HARMONIC,
    SHORT,
    TENUTO,
    ACCENT,
    MARCATO,
    FERMATA,
    VIBRATO,
    TRILL,
    BEND,
    PREBEND,
    RELEASE,
    ROLL,
    ROLL_DOWN,
    BRACKET,
    RING,
    FRETTING_FINGER,
    DEGREE;

    public static Sign of(Technique technique) {
        return switch (technique) {
            case SLAP -> SLAP;
            case POP -> POP;
            case THUMB -> THUMB;
            case FINGER -> FINGER;
            case INDEX -> INDEX;
            case MIDDLE -> MIDDLE;
            case THUMB_DOWN -> THUMB_DOWN;
            case THUMB_UP -> THUMB_UP;
            case PICK -> PICK;
            case PLUCK -> PLUCK;
            case TAP -> TAP;
            case MUTE -> MUTE;
            case RAKE -> RAKE;
            case LEFT_HAND -> LEFT_HAND;
        };
    }

    public static Sign of(Spread spread) {
        return switch (spread) {
            case ROLL, ROLL_UP -> ROLL;
            case ROLL_DOWN -> ROLL_DOWN;
            case BRACKET -> BRACKET;
        };
    }

    public static Sign of(Arrival.Kind kind) {
        return switch (kind) {
            case HAMMER -> HAMMER;
            case PULL -> PULL;
            case SLIDE -> SLIDE;
        };
    }
}
