package groundbass.score;

/** Where on the neck a note is: a string, counted from 1 at the highest, and a fret unless the string is dead. */
public sealed interface Place {
    int string();

    static Place of(int string, int fret) {
        return new Fretted(string, fret);
    }

    static Place dead(int string) {
        return new Dead(string);
    }

    private static void checkString(int string) {
        if (string < 1) {
            throw new IllegalArgumentException("strings count from 1: " + string);
        }
    }

    /** A pitched place; fret 0 is the open string. */
    record Fretted(int string, int fret) implements Place {
        public static final int MOST_FRETS = 36;

        public Fretted {
            checkString(string);
            if (fret < 0 || fret > MOST_FRETS) {
                throw new IllegalArgumentException("no such fret: " + fret);
            }
        }
    }

    /** A damped string, struck for its noise. */
    record Dead(int string) implements Place {
        public Dead {
            checkString(string);
        }
    }
}
