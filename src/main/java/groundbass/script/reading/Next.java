package groundbass.script.reading;

/** Whether what is said next is of the note in hand. */
enum Next {
    /** It is, unless that note has it already. */
    SAME_NOTE,
    /** A thought has begun: it is of another note, once the one in hand has a pitch or a place. */
    NEW_THOUGHT,
    /** It is of another note, whatever the one in hand lacks. */
    OTHER_NOTE;

    /** After "and", "then", "but". */
    Next afterBreak() {
        return this == OTHER_NOTE ? this : NEW_THOUGHT;
    }

    /** After a pronoun, which takes the note in hand up again. */
    Next takenUp() {
        return this == OTHER_NOTE ? this : SAME_NOTE;
    }
}
