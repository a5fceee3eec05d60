package groundbass.writing;

import groundbass.score.Fraction;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/** A note shape: its base and its dots, as it is drawn; what it lasts may be changed by a tuplet. */
public record NoteValue(Base base, int dots) {
    /** The undotted shapes. */
    public enum Base {
        WHOLE(1, 0),
        HALF(2, 0),
        QUARTER(4, 0),
        EIGHTH(8, 1),
        SIXTEENTH(16, 2),
        THIRTY_SECOND(32, 3),
        SIXTY_FOURTH(64, 4);

        private final int denominator;
        private final int beams;

        Base(int denominator, int beams) {
            this.denominator = denominator;
            this.beams = beams;
        }

        public Fraction length() {
            return Fraction.of(1, denominator);
        }

        /** How many flags or beams the shape carries. */
        public int beams() {
            return beams;
        }
    }

    /** The shapes we choose from, longest first: plain or with one dot, never with two (rule: fewest-note-shapes). */
    static final List<NoteValue> CHOICE = Arrays.stream(Base.values())
            .flatMap(base -> Stream.of(dotted(base), of(base)))
            .toList();

    private static final Map<Fraction, NoteValue> BY_LENGTH =
            CHOICE.stream().collect(Collectors.toUnmodifiableMap(NoteValue::length, value -> value));

    public NoteValue {
        Objects.requireNonNull(base);
        if (dots < 0 || dots > 2) {
            throw new IllegalArgumentException("none, one or two dots: " + dots);
        }
    }

    public static NoteValue of(Base base) {
        return new NoteValue(base, 0);
    }

    public static NoteValue dotted(Base base) {
        return new NoteValue(base, 1);
    }

    /** The shape with at most one dot that lasts exactly this long. */
    static Optional<NoteValue> lasting(Fraction length) {
        return Optional.ofNullable(BY_LENGTH.get(length));
    }

    /** The shape with at most one dot whose length is nearest, for times that no shape can say. */
    static NoteValue nearest(Fraction length) {
        return CHOICE.stream()
                .min(Comparator.comparing(value -> value.length().minus(length).max(length.minus(value.length()))))
                .orElseThrow();
    }

    /** As a time outside any tuplet: each dot adds half of what came before it. */
    public Fraction length() {
        return base.length().times(Fraction.of(2).minus(Fraction.of(1, 1L << dots)));
    }
}
