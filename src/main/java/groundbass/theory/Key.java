package groundbass.theory;

import groundbass.text.Message;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/** A tonic and a mode whose signature has at most seven sharps or flats: {@code A dorian}. */
public record Key(NoteName tonic, Mode mode) {
    public static final int MOST_FIFTHS = 7;

    public Key {
        Objects.requireNonNull(tonic);
        Objects.requireNonNull(mode);
        if (!isWritable(tonic, mode)) {
            throw new IllegalArgumentException("no signature for " + tonic + " " + mode);
        }
    }

    /** Whether a signature of at most seven signs exists for this tonic and mode. */
    public static boolean isWritable(NoteName tonic, Mode mode) {
        return Math.abs(fifths(tonic, mode)) <= MOST_FIFTHS;
    }

    /** Sharps (positive) or flats (negative) of the signature (rule: key-signatures). */
    public int fifths() {
        return fifths(tonic, mode);
    }

    /** The seven degrees in order, each letter once (rule: scale-spelling). */
    public List<NoteName> scale() {
        return IntStream.range(0, 7).mapToObj(this::degree).toList();
    }

    /** How the signature alters a letter, -1 to 1. */
    public int alterationOf(Letter letter) {
        int place = NoteName.of(letter).fifths() + 1; // sharps come in this order, flats in the other
        if (fifths() > place) {
            return 1;
        }
        return -fifths() > 6 - place ? -1 : 0;
    }

    /** Its name: {@code A Dorian}. */
    public Message said() {
        return Scale.of(mode).saidOn(tonic);
    }

    private NoteName degree(int index) {
        var letter = tonic.letter().plus(index);
        return new NoteName(letter, alterationOf(letter));
    }

    private static int fifths(NoteName tonic, Mode mode) {
        return tonic.fifths() + mode.fifthsFromMajor();
    }

    /** Reads what {@link #toString} writes; empty for anything else. */
    public static Optional<Key> parse(String text) {
        int gap = text.indexOf(' ');
        var tonic = gap < 0 ? Optional.<NoteName>empty() : NoteName.parse(text.substring(0, gap));
        return tonic.flatMap(name -> Stream.of(Mode.values())
                .filter(mode -> mode.toString().equals(text.substring(gap + 1)) && isWritable(name, mode))
                .findFirst()
                .map(mode -> new Key(name, mode)));
    }

    @Override
    public String toString() {
        return tonic + " " + mode;
    }
}
