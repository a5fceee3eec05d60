package groundbass.analysis;

/** What a note does where it stands, the plainest reading first. */
public enum ToneRole {
    /** The root of the chord. */
    ROOT,
    /** Third or seventh, which tell the chord. */
    GUIDE_TONE,
    CHORD_TONE,
    /** In the key and not in the chord, or without a chord. */
    SCALE_TONE,
    /** Outside both, a semitone before a note that belongs. */
    APPROACH,
    /** Outside both, on the way from one neighbour to the other or back. */
    PASSING,
    /** A lowered third, fifth or seventh, as the blues has them, or the raised sixth or seventh of minor. */
    COLOUR,
    /** Outside both, as the line is more than once: meant. */
    RECURRING,
    /** Outside both, without a reason that the notes give. */
    OUTSIDE;

    public boolean isChordTone() {
        return this == ROOT || this == GUIDE_TONE || this == CHORD_TONE;
    }

    /** The key of its name in the message bundle. */
    public String messageKey() {
        return "theory.role."
                + switch (this) {
                    case ROOT -> "root";
                    case GUIDE_TONE -> "guide-tone";
                    case CHORD_TONE -> "chord-tone";
                    case SCALE_TONE -> "scale-tone";
                    case APPROACH -> "approach";
                    case PASSING -> "passing";
                    case COLOUR -> "colour";
                    case RECURRING -> "recurring";
                    case OUTSIDE -> "outside";
                };
    }
}
