package groundbass.intake.draft;

import groundbass.theory.Key;
import groundbass.theory.Letter;
import groundbass.theory.Mode;
import groundbass.theory.NoteName;
import java.util.Optional;
import java.util.stream.IntStream;
import java.util.stream.Stream;

/** The key of a mode that has a signature. */
public final class KeyNames {
    private KeyNames() {}

    /** @param fifths sharps, or flats where negative; empty for more than seven */
    public static Optional<Key> of(int fifths, Mode mode) {
        return Stream.of(Letter.values())
                .flatMap(letter -> IntStream.rangeClosed(-1, 1).mapToObj(sign -> new NoteName(letter, sign)))
                .filter(tonic -> Key.isWritable(tonic, mode))
                .map(tonic -> new Key(tonic, mode))
                .filter(found -> found.fifths() == fifths)
                .findFirst();
    }
}
