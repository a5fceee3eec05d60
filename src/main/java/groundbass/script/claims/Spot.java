package groundbass.script.claims;

import java.util.OptionalInt;

/** A place as far as it was said: a string (1 is the highest), a fret, or both. */
public record Spot(OptionalInt string, OptionalInt fret) {
    public static final Spot NOWHERE = new Spot(OptionalInt.empty(), OptionalInt.empty());

    public static Spot onString(int string) {
        return new Spot(OptionalInt.of(string), OptionalInt.empty());
    }

    public static Spot atFret(int fret) {
        return new Spot(OptionalInt.empty(), OptionalInt.of(fret));
    }

    public static Spot of(int string, int fret) {
        return new Spot(OptionalInt.of(string), OptionalInt.of(fret));
    }

    public boolean isWhole() {
        return string.isPresent() && fret.isPresent();
    }

    /** This spot, with what it lacks taken from another. */
    public Spot or(Spot other) {
        return new Spot(string.isPresent() ? string : other.string, fret.isPresent() ? fret : other.fret);
    }
}
