package groundbass.theory;

import groundbass.text.Message;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;

/** A letter and its alteration in semitones, double flat (-2) to double sharp (2): {@code Bb}, {@code F#}. */
public record NoteName(Letter letter, int alteration) {
    public static final int MOST_ALTERED = 2;

    private static final List<Letter> BY_FIFTHS =
            List.of(Letter.F, Letter.C, Letter.G, Letter.D, Letter.A, Letter.E, Letter.B);

    /** In German these are not letter and ending. */
    private static final Set<String> OF_THEIR_OWN = Set.of("B", "B#", "B##", "Bb", "Bbb", "Ab", "Abb", "Eb", "Ebb");

    public NoteName {
        Objects.requireNonNull(letter);
        if (Math.abs(alteration) > MOST_ALTERED) {
            throw new IllegalArgumentException("alteration out of range: " + alteration);
        }
    }

    public static NoteName of(Letter letter) {
        return new NoteName(letter, 0);
    }

    /** @param fifths above C, below it where negative: -15 (F double flat) to 19 (B double sharp) */
    public static NoteName ofFifths(int fifths) {
        var letter = BY_FIFTHS.get(Math.floorMod(fifths + 1, BY_FIFTHS.size()));
        return new NoteName(letter, Math.floorDiv(fifths + 1, BY_FIFTHS.size()));
    }

    /** Reads {@code C}, {@code Bb}, {@code F##}; empty where the text is anything else. */
    public static Optional<NoteName> parse(String text) {
        if (text.isEmpty() || text.charAt(0) < 'A' || text.charAt(0) > 'G') {
            return Optional.empty();
        }
        var letter = Letter.valueOf(text.substring(0, 1));
        return switch (text.substring(1)) {
            case "" -> Optional.of(of(letter));
            case "#" -> Optional.of(new NoteName(letter, 1));
            case "##" -> Optional.of(new NoteName(letter, 2));
            case "b" -> Optional.of(new NoteName(letter, -1));
            case "bb" -> Optional.of(new NoteName(letter, -2));
            default -> Optional.empty();
        };
    }

    /** How the name is said: {@code F sharp}; the message bundle knows the names that a language does not build by rule. */
    public Message spoken() {
        if (OF_THEIR_OWN.contains(toString())) {
            return Message.of("walkthrough.note." + this);
        }
        String form =
                switch (alteration) {
                    case -2 -> "doubleflat";
                    case -1 -> "flat";
                    case 1 -> "sharp";
                    case 2 -> "doublesharp";
                    default -> "natural";
                };
        return Message.of("walkthrough.note." + form, letter.toString());
    }

    /** How many fifths above C it lies: G 1, F -1, F sharp 6. */
    public int fifths() {
        return BY_FIFTHS.indexOf(letter) - 1 + BY_FIFTHS.size() * alteration;
    }

    /** 0 (C) to 11 (B). */
    public int pitchClass() {
        return Math.floorMod(letter.semitones() + alteration, 12);
    }

    @Override
    public String toString() {
        return letter + (alteration < 0 ? "b" : "#").repeat(Math.abs(alteration));
    }
}
