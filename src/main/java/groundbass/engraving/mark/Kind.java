package groundbass.engraving.mark;

/** What a mark is. */
public enum Kind {
    STAFF_LINE,
    LEDGER,
    CLEF,
    KEY,
    TIME,
    BARLINE,
    REPEAT_DOT,
    HEAD,
    PARENTHESIS,
    STEM,
    FLAG,
    BEAM,
    REST,
    DOT,
    ACCIDENTAL,
    TIE,
    SLUR,
    SLUR_LETTER,
    SLIDE,
    TUPLET,
    ARTICULATION,
    VIBRATO,
    TRILL,
    BEND,
    SPREAD,
    OTTAVA,
    RING,
    DYNAMIC,
    HAIRPIN,
    WORDS,
    FRET,
    TECHNIQUE,
    FINGER,
    FIGURE,
    COUNT,
    CHORD_NAME,
    SECTION,
    TEMPO,
    FEEL,
    BAR_NUMBER,
    ENDING,
    JUMP,
    SIMILE,
    TEXT,
    QR;

    /** Whether a mark of this kind makes its group a note, a rest, or a bar of which a sign says the same. */
    boolean isNoteOrRest() {
        return this == HEAD || this == FRET || this == REST || this == SIMILE;
    }
}
