package groundbass.sound.mix;

/** What a mix is made of: how loud each stem stands in it, and where (common practice, no source). */
public enum Stem {
    BASS("bass", 0.354, 0, 0.02),
    DRUMS("drums", 1.273, 0, 0.1),
    CHORDS("chords", 1.11, 0.2, 0.12),
    CLICK("click", 0.99, 0, 0.02);

    private final String word;
    private final double level;
    private final double pan;
    private final double room;

    Stem(String word, double level, double pan, double room) {
        this.word = word;
        this.level = level;
        this.pan = pan;
        this.room = room;
    }

    /** Its name in file names and manifests. */
    public String word() {
        return word;
    }

    double level() {
        return level;
    }

    /** How much of it goes into the room. */
    double room() {
        return room;
    }

    /** From -1, left, to 1, right. */
    public double pan() {
        return pan;
    }

    /** The share of one stem that is heard on the left, by equal power: the squares of both shares add up to 1. */
    float left() {
        return (float) StrictMath.cos((pan + 1) * Math.PI / 4);
    }

    float right() {
        return (float) StrictMath.sin((pan + 1) * Math.PI / 4);
    }
}
