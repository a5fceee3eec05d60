package groundbass.musicxml;

import groundbass.theory.Quality;
import java.util.List;
import java.util.Locale;

/**
 * A chord as the format names it: the nearest of its kinds, and the degrees that differ (MusicXML 4.0, kind-value and
 * degree). An added degree is counted against a dominant chord, so that a plain seventh is the minor one.
 *
 * @param name a value of {@code kind}
 */
public record ChordKind(String name, List<Degree> degrees) {
    /** What is done to a chord's degree. */
    public enum Type {
        ADD,
        ALTER,
        SUBTRACT;

        public String word() {
            return name().toLowerCase(Locale.ROOT);
        }
    }

    /** One degree that the kind does not have, or has otherwise. */
    public record Degree(int number, int alteration, Type type) {}

    public ChordKind {
        degrees = List.copyOf(degrees);
    }

    public static ChordKind of(Quality quality) {
        return switch (quality) {
            case MAJOR -> kind("major");
            case MINOR -> kind("minor");
            case DIMINISHED -> kind("diminished");
            case AUGMENTED -> kind("augmented");
            case POWER -> kind("power");
            case SUSPENDED_SECOND -> kind("suspended-second");
            case SUSPENDED_FOURTH -> kind("suspended-fourth");
            case ADDED_NINTH -> kind("major", add(9, 0));
            case MINOR_ADDED_NINTH -> kind("minor", add(9, 0));
            case SIXTH -> kind("major-sixth");
            case MINOR_SIXTH -> kind("minor-sixth");
            case SIX_NINE -> kind("major-sixth", add(9, 0));
            case MINOR_SIX_NINE -> kind("minor-sixth", add(9, 0));
            case SEVENTH -> kind("dominant");
            case MAJOR_SEVENTH -> kind("major-seventh");
            case MINOR_SEVENTH -> kind("minor-seventh");
            case MINOR_MAJOR_SEVENTH -> kind("major-minor");
            case HALF_DIMINISHED -> kind("half-diminished");
            case DIMINISHED_SEVENTH -> kind("diminished-seventh");
            case AUGMENTED_SEVENTH -> kind("augmented-seventh");
            case SEVENTH_FLAT_FIVE -> kind("dominant", new Degree(5, -1, Type.ALTER));
            case SEVENTH_SUSPENDED -> kind("suspended-fourth", add(7, 0));
            case SEVENTH_FLAT_NINE -> kind("dominant", add(9, -1));
            case SEVENTH_SHARP_NINE -> kind("dominant", add(9, 1));
            case SEVENTH_SHARP_ELEVEN -> kind("dominant", add(11, 1));
            case SEVENTH_FLAT_THIRTEENTH -> kind("dominant", add(13, -1));
            case MAJOR_SEVENTH_SHARP_ELEVEN -> kind("major-seventh", add(11, 1));
            case NINTH -> kind("dominant-ninth");
            case MAJOR_NINTH -> kind("major-ninth");
            case MINOR_NINTH -> kind("minor-ninth");
            case NINTH_SUSPENDED -> kind("suspended-fourth", add(7, 0), add(9, 0));
            case ELEVENTH -> kind("dominant-11th", without(3));
            case MINOR_ELEVENTH -> kind("minor-11th");
            case THIRTEENTH -> kind("dominant-13th", without(11));
            case THIRTEENTH_SUSPENDED -> kind("suspended-fourth", add(7, 0), add(9, 0), add(13, 0));
            case MAJOR_THIRTEENTH -> kind("major-13th", without(11));
            case MINOR_THIRTEENTH -> kind("minor-13th", without(11));
        };
    }

    private static ChordKind kind(String name, Degree... degrees) {
        return new ChordKind(name, List.of(degrees));
    }

    private static Degree add(int number, int alteration) {
        return new Degree(number, alteration, Type.ADD);
    }

    private static Degree without(int number) {
        return new Degree(number, 0, Type.SUBTRACT);
    }
}
