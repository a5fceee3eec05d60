package groundbass.score;

/** What strikes the string. The words of line text, in the trade's sense. */
public enum Technique {
    /** The side of the thumb strikes the string against the last frets. */
    SLAP("slap"),
    /** A finger hooks under the string and snaps it. */
    POP("pop"),
    /** The thumb plucks, as on a double bass or a classical guitar. */
    THUMB("thumb"),
    /** Index and middle in turn, whichever comes. */
    FINGER("finger"),
    INDEX("i"),
    MIDDLE("m"),
    /** The thumb strikes through the string and rests on the next. */
    THUMB_DOWN("down"),
    /** The thumb comes back up through the string. */
    THUMB_UP("up"),
    PICK("pick"),
    /** Thumb and fingers take their strings together. */
    PLUCK("pluck"),
    /** A finger of the plucking hand hammers on the fretboard. */
    TAP("tap"),
    /** The edge of the plucking hand rests on the strings by the bridge. */
    MUTE("mute"),
    /** One finger drags across adjacent strings. */
    RAKE("rake"),
    /** The fretting hand strikes; the plucking hand rests. */
    LEFT_HAND("lefthand");

    private final String word;

    Technique(String word) {
        this.word = word;
    }

    /** The word that line text uses. */
    public String word() {
        return word;
    }
}
