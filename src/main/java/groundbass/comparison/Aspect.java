package groundbass.comparison;

/** In what respect two bars differ at a moment, the one that is heard most first. */
enum Aspect {
    /** When a note begins or ends. */
    RHYTHM,
    /** Which notes sound. */
    PITCH,
    /** On which string and fret the same notes are played. */
    PLACE,
    /** How the same notes are struck, reached or ornamented. */
    TECHNIQUE,
    /** Chord names, words and loudness beside the notes. */
    WORDS,
    /** What is written at the bar as a whole: section, key, meter, tempo, repeats. */
    SIGNS;

    /** The key of its name in the message bundles. */
    public String messageKey() {
        return switch (this) {
            case RHYTHM -> "compare.aspect.rhythm";
            case PITCH -> "compare.aspect.pitch";
            case PLACE -> "compare.aspect.place";
            case TECHNIQUE -> "compare.aspect.technique";
            case WORDS -> "compare.aspect.words";
            case SIGNS -> "compare.aspect.signs";
        };
    }
}
