package groundbass.braille;

/**
 * Braille cells of six dots in a row.
 *
 * @param patterns one character of Unicode's braille patterns each (ISO/IEC 10646, U+2800 and the pattern of dots)
 */
record Cells(String patterns) {
    static final Cells NONE = new Cells("");
    static final Cells BLANK = of(" ");
    static final Cells DOT_3 = of("'");

    /**
     * North American ASCII braille: the character for each pattern, dot 1 the lowest bit (Music Braille Code and the
     * International Manual print their examples in it).
     */
    private static final String ASCII = " A1B'K2L@CIF/MSP\"E3H9O6R^DJG>NTQ,*5<-U8V.%[$+X!&;:4\\0Z7(_?W]#Y)=";

    private static final char EMPTY = '\u2800';
    private static final int LEFT_DOTS = 0b111;

    Cells {
        for (int i = 0; i < patterns.length(); i++) { // a stream takes longer than all the rest of a sheet
            if (patterns.charAt(i) < EMPTY || patterns.charAt(i) >= EMPTY + ASCII.length()) {
                throw new IllegalArgumentException("not cells of six dots: " + patterns);
            }
        }
    }

    /** As the tables of the music codes print them; small letters are letters, too. */
    static Cells of(String ascii) {
        var patterns = new StringBuilder();
        for (char each : ascii.toCharArray()) {
            int dots = ASCII.indexOf(Character.toUpperCase(each));
            if (dots < 0) {
                throw new IllegalArgumentException("no cell for " + each);
            }
            patterns.append((char) (EMPTY + dots));
        }
        return new Cells(patterns.toString());
    }

    static Cells blanks(int count) {
        return BLANK.times(count);
    }

    int length() {
        return patterns.length();
    }

    boolean isEmpty() {
        return patterns.isEmpty();
    }

    Cells plus(Cells next) {
        return new Cells(patterns + next.patterns);
    }

    Cells times(int count) {
        return new Cells(patterns.repeat(count));
    }

    Cells first(int count) {
        return new Cells(patterns.substring(0, count));
    }

    Cells from(int index) {
        return new Cells(patterns.substring(index));
    }

    /** Whether its first cell has a dot on the left side, where letters that end just before would run into it. */
    boolean beginsWithLeftDots() {
        return !isEmpty() && (patterns.charAt(0) - EMPTY & LEFT_DOTS) != 0;
    }

    /** These cells, which end in letters or figures, and what follows them (rule: braille-dot-three). */
    Cells apart(Cells next) {
        boolean touches = !isEmpty() && !patterns.endsWith(DOT_3.patterns) && next.beginsWithLeftDots();
        return touches ? plus(DOT_3).plus(next) : plus(next);
    }

    /** With dot 3 behind letters or figures, whatever follows. */
    Cells closed() {
        return patterns.endsWith(DOT_3.patterns) ? this : plus(DOT_3);
    }

    /** In capital letters, as braille files have it. */
    String ascii() {
        var text = new StringBuilder();
        patterns.chars().forEach(cell -> text.append(ASCII.charAt(cell - EMPTY)));
        return text.toString();
    }

    @Override
    public String toString() {
        return ascii();
    }
}
