package groundbass.musicxml;

/** The two staves of the part, counted from the top. */
enum Staff {
    NOTATION(1, 1),
    TABLATURE(2, 5);

    private final int number;
    private final int firstVoice;

    Staff(int number, int firstVoice) {
        this.number = number;
        this.firstVoice = firstVoice;
    }

    int number() {
        return number;
    }

    /** Voices of one part have numbers of their own on each staff (common practice: four to a staff). */
    int voice(int index) {
        return firstVoice + index;
    }
}
