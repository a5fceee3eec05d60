package groundbass.script;

import java.util.OptionalInt;

/** A place as far as it was said: a string (1 is the highest), a fret, or both. */
record Spot(OptionalInt string, OptionalInt fret) {
    static final Spot NOWHERE = new Spot(OptionalInt.empty(), OptionalInt.empty());

    static Spot onString(int string) {
        return new Spot(OptionalInt.of(string), OptionalInt.empty());
    }

    static Spot atFret(int fret) {
        return new Spot(OptionalInt.empty(), OptionalInt.of(fret));
    }

    static Spot of(int string, int fret) {
        return new Spot(OptionalInt.of(string), OptionalInt.of(fret));
    }

    boolean isWhole() {
        return string.isPresent() && fret.isPresent();
    }

    /** This spot, with what it lacks taken from another. */
    Spot or(Spot other) {
        return new Spot(string.isPresent() ? string : other.string, fret.isPresent() ? fret : other.fret);
    }
}
