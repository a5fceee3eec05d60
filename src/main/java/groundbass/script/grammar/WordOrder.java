package groundbass.script.grammar;

/** What a language puts behind a time with which a clause opens. */
enum WordOrder {
    /** "On three you play ...". */
    SUBJECT_FIRST,
    /** "Auf der Drei spielst du ...": a subject there begins another clause. */
    VERB_SECOND;

    /** @param there whether the subject is a mere "there", which takes up the time again */
    boolean allows(boolean there) {
        return this == SUBJECT_FIRST || there;
    }
}
