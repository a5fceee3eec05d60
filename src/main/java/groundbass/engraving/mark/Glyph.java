package groundbass.engraving.mark;

import groundbass.writing.NoteValue.Base;

/** The music font's glyphs that a sheet uses. The code points are SMuFL 1.4's (rule: glyph-codes); the names are ours. */
public enum Glyph {
    F_CLEF(0xE062),
    OTTAVA(0xE511),
    TAB_CLEF_FOUR(0xE06E),
    TAB_CLEF_SIX(0xE06D),
    TIME_0(0xE080),
    TIME_1(0xE081),
    TIME_2(0xE082),
    TIME_3(0xE083),
    TIME_4(0xE084),
    TIME_5(0xE085),
    TIME_6(0xE086),
    TIME_7(0xE087),
    TIME_8(0xE088),
    TIME_9(0xE089),
    TIME_PLUS(0xE08C),
    HEAD_WHOLE(0xE0A2),
    HEAD_HALF(0xE0A3),
    HEAD_BLACK(0xE0A4),
    X_WHOLE(0xE0A7),
    X_HALF(0xE0A8),
    X_BLACK(0xE0A9),
    DIAMOND_WHOLE(0xE0D8),
    DIAMOND_HALF(0xE0D9),
    DIAMOND_BLACK(0xE0DB),
    PARENTHESIS_LEFT(0xE0F5),
    PARENTHESIS_RIGHT(0xE0F6),
    DOT(0xE1E7),
    FLAG_8_UP(0xE240),
    FLAG_8_DOWN(0xE241),
    FLAG_16_UP(0xE242),
    FLAG_16_DOWN(0xE243),
    FLAG_32_UP(0xE244),
    FLAG_32_DOWN(0xE245),
    FLAG_64_UP(0xE246),
    FLAG_64_DOWN(0xE247),
    FLAT(0xE260),
    NATURAL(0xE261),
    SHARP(0xE262),
    DOUBLE_SHARP(0xE263),
    DOUBLE_FLAT(0xE264),
    ACCIDENTAL_PARENTHESIS_LEFT(0xE26A),
    ACCIDENTAL_PARENTHESIS_RIGHT(0xE26B),
    ACCENT_ABOVE(0xE4A0),
    ACCENT_BELOW(0xE4A1),
    TENUTO_ABOVE(0xE4A4),
    TENUTO_BELOW(0xE4A5),
    MARCATO_ABOVE(0xE4AC),
    MARCATO_BELOW(0xE4AD),
    STACCATO_ABOVE(0xE4A2),
    STACCATO_BELOW(0xE4A3),
    FERMATA(0xE4C0),
    FERMATA_BELOW(0xE4C1),
    REST_WHOLE(0xE4E3),
    REST_HALF(0xE4E4),
    REST_QUARTER(0xE4E5),
    REST_8(0xE4E6),
    REST_16(0xE4E7),
    REST_32(0xE4E8),
    REST_64(0xE4E9),
    REPEAT_DOT(0xE044),
    SEGNO(0xE047),
    CODA(0xE048),
    REPEAT_BAR(0xE500),
    PP(0xE52B),
    P(0xE520),
    MP(0xE52C),
    MF(0xE52D),
    F(0xE522),
    FF(0xE52F),
    DOWN_STROKE(0xE610),
    UP_STROKE(0xE612),
    TUPLET_0(0xE880),
    TUPLET_1(0xE881),
    TUPLET_2(0xE882),
    TUPLET_3(0xE883),
    TUPLET_4(0xE884),
    TUPLET_5(0xE885),
    TUPLET_6(0xE886),
    TUPLET_7(0xE887),
    TUPLET_8(0xE888),
    TUPLET_9(0xE889),
    TUPLET_COLON(0xE88A),
    TRILL(0xE566),
    TRILL_WAVE(0xEAA4),
    ROLL_WAVE(0xEAA9),
    VIBRATO(0xEAB0),
    MET_HALF(0xECA3),
    MET_QUARTER(0xECA5),
    MET_8(0xECA7),
    MET_16(0xECA9),
    MET_DOT(0xECB7);

    private final int codePoint;

    Glyph(int codePoint) {
        this.codePoint = codePoint;
    }

    public int codePoint() {
        return codePoint;
    }

    /** The figure of a time signature, 0 to 9. */
    public static Glyph timeFigure(int digit) {
        return values()[TIME_0.ordinal() + digit];
    }

    /** The figure of a tuplet, 0 to 9. */
    public static Glyph tupletFigure(int digit) {
        return values()[TUPLET_0.ordinal() + digit];
    }

    public static Glyph rest(Base base) {
        return switch (base) {
            case WHOLE -> REST_WHOLE;
            case HALF -> REST_HALF;
            case QUARTER -> REST_QUARTER;
            case EIGHTH -> REST_8;
            case SIXTEENTH -> REST_16;
            case THIRTY_SECOND -> REST_32;
            case SIXTY_FOURTH -> REST_64;
        };
    }

    /** @param flags 1 to 4 */
    public static Glyph flag(int flags, boolean up) {
        return values()[FLAG_8_UP.ordinal() + 2 * (flags - 1) + (up ? 0 : 1)];
    }
}
