package groundbass.musicxml;

import java.util.OptionalInt;

/**
 * The numbers that tell slurs, slides and hammers apart which are open at once. On a string one thing at a time leads
 * from note to note, so the string is the number; the tablature's are counted on from there. The format has sixteen, so
 * on a neck of more than eight strings the tablature goes without.
 */
record SpannerNumbers(int strings) {
    private static final int FOR_EACH_STAFF = 8;

    OptionalInt of(Staff staff, int string) {
        return switch (staff) {
            case NOTATION -> OptionalInt.of(string);
            case TABLATURE -> strings > FOR_EACH_STAFF ? OptionalInt.empty() : OptionalInt.of(string + FOR_EACH_STAFF);
        };
    }
}
