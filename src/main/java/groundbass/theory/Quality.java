package groundbass.theory;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * What kind of chord stands on a root: its canonical suffix, the other suffixes players write, and its degrees.
 * The degrees are those of rule: chord-tones and its kin; the suffixes are common practice, no source.
 */
public enum Quality {
    MAJOR("", "1 3 5", "maj", "M"),
    MINOR("m", "1 b3 5", "min", "mi", "-"),
    DIMINISHED("dim", "1 b3 b5", "°", "o"),
    AUGMENTED("aug", "1 3 #5", "+"),
    POWER("5", "1 5"),
    SUSPENDED_SECOND("sus2", "1 2 5"),
    SUSPENDED_FOURTH("sus4", "1 4 5", "sus"),
    ADDED_NINTH("add9", "1 3 5 9"),
    MINOR_ADDED_NINTH("madd9", "1 b3 5 9"),
    SIXTH("6", "1 3 5 6"),
    MINOR_SIXTH("m6", "1 b3 5 6", "min6", "-6"),
    SIX_NINE("69", "1 3 5 6 9", "6/9"),
    MINOR_SIX_NINE("m69", "1 b3 5 6 9", "m6/9", "min69", "-69"),
    SEVENTH("7", "1 3 5 b7"),
    MAJOR_SEVENTH("maj7", "1 3 5 7", "M7", "Maj7", "ma7", "Δ", "Δ7"),
    MINOR_SEVENTH("m7", "1 b3 5 b7", "min7", "mi7", "-7"),
    MINOR_MAJOR_SEVENTH("mmaj7", "1 b3 5 7", "mMaj7", "mM7", "m(maj7)"),
    HALF_DIMINISHED("m7b5", "1 b3 b5 b7", "min7b5", "-7b5", "m7(b5)", "ø", "ø7"),
    DIMINISHED_SEVENTH("dim7", "1 b3 b5 bb7", "°7", "o7"),
    AUGMENTED_SEVENTH("7#5", "1 3 #5 b7", "7(#5)", "aug7", "+7"),
    SEVENTH_FLAT_FIVE("7b5", "1 3 b5 b7", "7(b5)"),
    SEVENTH_SUSPENDED("7sus4", "1 4 5 b7", "7sus"),
    SEVENTH_FLAT_NINE("7b9", "1 3 5 b7 b9", "7(b9)"),
    SEVENTH_SHARP_NINE("7#9", "1 3 5 b7 #9", "7(#9)"),
    SEVENTH_SHARP_ELEVEN("7#11", "1 3 5 b7 #11", "7(#11)"),
    SEVENTH_FLAT_THIRTEENTH("7b13", "1 3 5 b7 b13", "7(b13)"),
    MAJOR_SEVENTH_SHARP_ELEVEN("maj7#11", "1 3 5 7 #11", "M7#11", "maj7(#11)"),
    NINTH("9", "1 3 5 b7 9"),
    MAJOR_NINTH("maj9", "1 3 5 7 9", "M9", "Maj9"),
    MINOR_NINTH("m9", "1 b3 5 b7 9", "min9", "-9"),
    NINTH_SUSPENDED("9sus4", "1 4 5 b7 9", "9sus"),
    ELEVENTH("11", "1 5 b7 9 11"),
    MINOR_ELEVENTH("m11", "1 b3 5 b7 9 11", "min11", "-11"),
    THIRTEENTH("13", "1 3 5 b7 9 13"),
    THIRTEENTH_SUSPENDED("13sus4", "1 4 5 b7 9 13", "13sus"),
    MAJOR_THIRTEENTH("maj13", "1 3 5 7 9 13", "M13"),
    MINOR_THIRTEENTH("m13", "1 b3 5 b7 9 13", "min13", "-13");

    private final String suffix;
    private final List<Degree> degrees;
    private final List<String> aliases;

    Quality(String suffix, String degrees, String... aliases) {
        this.suffix = suffix;
        this.degrees = Arrays.stream(degrees.split(" ")).map(Degree::parse).toList();
        this.aliases = List.of(aliases);
    }

    /** The suffix written after the root, empty for a major triad. */
    public String suffix() {
        return suffix;
    }

    /** From the root up. */
    public List<Degree> degrees() {
        return degrees;
    }

    public boolean has(Degree degree) {
        return degrees.contains(degree);
    }

    static Optional<Quality> ofSuffix(String text) {
        return Arrays.stream(values())
                .filter(quality -> quality.suffix.equals(text) || quality.aliases.contains(text))
                .findFirst();
    }
}
