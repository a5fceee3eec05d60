package groundbass.engraving.options;

import java.util.OptionalDouble;

/**
 * What a sheet is printed on, in staff spaces.
 *
 * @param height empty where the page is as high as its music, as on a screen
 * @param staffSpace how large a staff space is printed, in millimetres
 */
public record Paper(double width, OptionalDouble height, double margin, double staffSpace) {
    /** A staff of seven millimetres, as lesson sheets have (rule: staff-size). */
    public static final double USUAL_STAFF_SPACE = 1.75;

    public static final double SCREEN_MARGIN = 1;

    public static final double MARGIN_MILLIMETRES = 15;

    public static final Paper A4 = ofMillimetres(210, 297, USUAL_STAFF_SPACE);

    public static final Paper LETTER = ofMillimetres(215.9, 279.4, USUAL_STAFF_SPACE);

    public Paper {
        if (!(width > 2 * margin) || !(staffSpace > 0)) {
            throw new IllegalArgumentException("no room on paper " + width + " wide");
        }
    }

    /** A4 and the like with any size of staff. */
    public static Paper ofMillimetres(double width, double height, double staffSpace) {
        return new Paper(
                width / staffSpace,
                OptionalDouble.of(height / staffSpace),
                MARGIN_MILLIMETRES / staffSpace,
                staffSpace);
    }

    /** One endless page, so many staff spaces wide: about 48 for a phone, 110 for a desk. */
    public static Paper screen(double widthInSpaces) {
        return new Paper(widthInSpaces, OptionalDouble.empty(), SCREEN_MARGIN, USUAL_STAFF_SPACE);
    }

    public double room() {
        return width - 2 * margin;
    }

    /** The same sheet of paper with smaller staves, so that more fits on it. */
    public Paper holding(double neededRoom) {
        double factor = Math.max(1, neededRoom / room());
        var higher = height.isPresent() ? OptionalDouble.of(height.getAsDouble() * factor) : height;
        return new Paper(width * factor, higher, margin * factor, staffSpace / factor);
    }
}
