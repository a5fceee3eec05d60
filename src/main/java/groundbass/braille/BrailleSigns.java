package groundbass.braille;

import groundbass.score.Dynamic;
import groundbass.score.Meter;
import groundbass.theory.Key;
import groundbass.theory.Letter;
import groundbass.writing.Head;
import groundbass.writing.NoteValue;
import groundbass.writing.NoteValue.Base;
import java.util.List;
import java.util.Optional;

/** The tables of signs, in the order of the International Manual's chapters. */
final class BrailleSigns {
    /** rule: braille-word-sign. */
    static final Cells WORD = Cells.of(">");

    static final Cells LARGER = Cells.of("^<1");
    static final Cells SMALLER = Cells.of(",<1");
    static final Cells HYPHEN = Cells.of("\"");
    static final Cells NUMBER = Cells.of("#");
    static final Cells TRIPLET = Cells.of("2");
    static final Cells IN_ACCORD = Cells.of("<>");
    static final Cells SLUR = Cells.of("C");
    static final Cells TIE = Cells.of("@C");
    static final Cells CHORD_TIE = Cells.of(".C");
    static final Cells SLIDE = Cells.of("@A");
    static final Cells GRACE = Cells.of("5");
    static final Cells TRILL = Cells.of("6");
    static final Cells HARMONIC = Cells.of("K");
    static final Cells ARTIFICIAL_HARMONIC = Cells.of("*L");
    static final Cells DOWN_STROKE = Cells.of("<B");
    static final Cells UP_STROKE = Cells.of("<'");
    static final Cells PARENTHESIS = Cells.of(",'");
    static final Cells SHORT = Cells.of("8");
    static final Cells ACCENT = Cells.of(".8");
    static final Cells MARCATO = Cells.of(";8");
    static final Cells HELD = Cells.of("_8");
    static final Cells SHORT_AND_HELD = Cells.of("\"8");
    static final Cells ROLL = Cells.of(">K");
    static final Cells ROLL_DOWN = Cells.of(">KK");
    static final Cells FERMATA = Cells.of("<L");
    static final Cells FILLING = Cells.of("\"");
    static final Cells CRESCENDO = Cells.of(">C");
    static final Cells DIMINUENDO = Cells.of(">D");
    static final Cells CRESCENDO_ENDS = Cells.of(">3");
    static final Cells DIMINUENDO_ENDS = Cells.of(">4");
    static final Cells REPEAT_BEGINS = Cells.of("<7");
    static final Cells REPEAT_ENDS = Cells.of("<2");
    static final Cells LAST_BAR = Cells.of("<K");
    static final Cells SECTION_ENDS = Cells.of("<K'");
    static final Cells SEGNO = Cells.of("+");
    static final Cells CODA = Cells.of("+L");

    private static final List<String> NOTES = List.of("YZ&=(!)", "NOPQRST", "?:$]\\[W", "DEFGHIJ");
    private static final String RESTS = "MUVX";
    private static final List<String> OCTAVES = List.of("@@", "@", "^", "_", "\"", ".", ";", ",", ",,");
    private static final String INTERVALS = "/+#903-";
    private static final List<String> STRINGS = List.of("%A", "%B", "%L", "%1", "%K", "%2", "%'");
    private static final String FINGERS = "ABL1";
    private static final int SEVENTH_FRET = 7;
    private static final int STEPS = 7;

    private BrailleSigns() {}

    /** Which of four shapes a value has: whole and sixteenth share one, and so on (rule: braille-note-values). */
    static int shape(Base base) {
        return switch (base) {
            case WHOLE, SIXTEENTH -> 0;
            case HALF, THIRTY_SECOND -> 1;
            case QUARTER, SIXTY_FOURTH -> 2;
            case EIGHTH -> 3;
        };
    }

    /** Whether it is the smaller of the two values of its shape. */
    static boolean isSmaller(Base base) {
        return switch (base) {
            case WHOLE, HALF, QUARTER, EIGHTH -> false;
            case SIXTEENTH, THIRTY_SECOND, SIXTY_FOURTH -> true;
        };
    }

    static Cells note(Letter letter, NoteValue value) {
        String shapes = NOTES.get(shape(value.base()));
        return at(shapes, letter.ordinal()).plus(Cells.DOT_3.times(value.dots()));
    }

    static Cells rest(NoteValue value) {
        return at(RESTS, shape(value.base())).plus(Cells.DOT_3.times(value.dots()));
    }

    /** Octaves go from C to B and are counted as scientific pitch counts them; what lies beyond has the outermost mark. */
    static Cells octave(int octave) {
        return Cells.of(OCTAVES.get(Math.max(0, Math.min(OCTAVES.size() - 1, octave))));
    }

    static boolean hasOctave(int octave) {
        return octave >= 0 && octave < OCTAVES.size();
    }

    static Cells accidental(Head.Sign sign) {
        return Cells.of(
                switch (sign) {
                    case SHARP -> "%";
                    case FLAT -> "<";
                    case NATURAL -> "*";
                    case DOUBLE_SHARP -> "%%";
                    case DOUBLE_FLAT -> "<<";
                });
    }

    /** One by one up to three, and a number before four and more. */
    static Cells key(Key key) {
        return repeated(Cells.of(key.fifths() < 0 ? "<" : "%"), Math.abs(key.fifths()));
    }

    /** A signature that takes another away and puts nothing in its place: as many naturals. */
    static Cells cancelled(Key before) {
        return repeated(Cells.of("*"), Math.abs(before.fifths()));
    }

    private static Cells repeated(Cells sign, int count) {
        return count <= 3 ? sign.times(count) : number(count).plus(sign);
    }

    static Cells time(Meter meter) {
        return number(meter.counts()).plus(lower(String.valueOf(meter.unit())));
    }

    /** The number sign and figures in the upper part of their cells. */
    static Cells number(int value) {
        var cells = NUMBER;
        for (char figure : String.valueOf(value).toCharArray()) {
            cells = cells.plus(at("JABCDEFGHI", figure - '0'));
        }
        return cells;
    }

    /** Figures in the lower part of their cells, which ASCII braille writes as figures; a dash is dots 3 and 6. */
    static Cells lower(String figures) {
        return Cells.of(figures);
    }

    /** Several notes in the time of others (rule: braille-tuplets). */
    static Cells tuplet(int actual, int normal) {
        return actual == 3 && normal == 2
                ? TRIPLET
                : Cells.of("_").plus(lower(String.valueOf(actual))).plus(Cells.DOT_3);
    }

    /** @param steps on the staff from the lower note to the upper: 1 is a second; an octave more has the same sign */
    static Cells interval(int steps) {
        return at(INTERVALS, Math.floorMod(steps - 1, STEPS));
    }

    static Optional<Cells> string(int number) {
        return number <= STRINGS.size() ? Optional.of(Cells.of(STRINGS.get(number - 1))) : Optional.empty();
    }

    /** Beyond the twelfth, the table is gone on with: an octave sign for every seven frets (rule: braille-fret-signs). */
    static Cells fret(int fret) {
        if (fret == SEVENTH_FRET) {
            return Cells.of(",>3");
        }
        int octaves = (fret - 1) / STEPS;
        int steps = (fret - 1) % STEPS;
        if (octaves == 0 && steps == 0) {
            return Cells.of(">>");
        }
        var rest = steps == 0 ? Cells.NONE : interval(steps);
        return WORD.plus(Cells.of("-").times(octaves)).plus(rest);
    }

    static Cells finger(int finger) {
        return at(FINGERS, finger - 1);
    }

    static Cells dynamic(Dynamic dynamic) {
        return WORD.plus(Cells.of(dynamic.toString()));
    }

    private static Cells at(String table, int index) {
        return Cells.of(table.substring(index, index + 1));
    }
}
