package groundbass.script.lexicon;

/** What a language puts behind a time with which a clause opens. */
public enum WordOrder {
    /** "On three you play ...". */
    SUBJECT_FIRST,
    /** "Auf der Drei spielst du ...": a subject there begins another clause. */
    VERB_SECOND;

    /** @param topic whether the time is what the clause speaks of: a bar, or one that is taken up again with "there" */
    public boolean allows(boolean topic) {
        return this == SUBJECT_FIRST || topic;
    }
}
