package groundbass.script.claims;

import java.util.OptionalInt;

/** A place as far as it was said: a string (1 is the highest), a fret, or both. */
public record NamedPlace(OptionalInt string, OptionalInt fret) {
    public static final NamedPlace NOWHERE = new NamedPlace(OptionalInt.empty(), OptionalInt.empty());

    public static NamedPlace onString(int string) {
        return new NamedPlace(OptionalInt.of(string), OptionalInt.empty());
    }

    public static NamedPlace atFret(int fret) {
        return new NamedPlace(OptionalInt.empty(), OptionalInt.of(fret));
    }

    public static NamedPlace of(int string, int fret) {
        return new NamedPlace(OptionalInt.of(string), OptionalInt.of(fret));
    }

    public boolean isWhole() {
        return string.isPresent() && fret.isPresent();
    }

    /** This spot, with what it lacks taken from another. */
    public NamedPlace or(NamedPlace other) {
        return new NamedPlace(string.isPresent() ? string : other.string, fret.isPresent() ? fret : other.fret);
    }
}
