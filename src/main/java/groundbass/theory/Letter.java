package groundbass.theory;

/** The seven note letters with their distance above C in semitones. */
public enum Letter {
    C(0),
    D(2),
    E(4),
    F(5),
    G(7),
    A(9),
    B(11);

    private final int semitones;

    Letter(int semitones) {
        this.semitones = semitones;
    }

    public int semitones() {
        return semitones;
    }

    /** The letter {@code steps} scale steps above this one, wrapping from B to C. */
    public Letter plus(int steps) {
        return values()[Math.floorMod(ordinal() + steps, values().length)];
    }
}
