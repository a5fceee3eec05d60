package groundbass.groove;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;

/** What a drummer strikes, from the feet up. */
public enum Piece {
    KICK,
    SNARE,
    /** The stick laid across the snare's rim. */
    RIM,
    CLAP,
    /** The closed hi-hat. */
    HAT,
    /** The hi-hat struck open. */
    OPEN,
    /** The hi-hat closed by foot. */
    PEDAL,
    RIDE,
    BELL,
    CRASH,
    HIGHTOM,
    MIDTOM,
    LOWTOM,
    SHAKER,
    TAMBOURINE,
    COWBELL;

    /** The word that stands before the piece's row. */
    public String word() {
        return name().toLowerCase(Locale.ROOT);
    }

    static Optional<Piece> ofWord(String word) {
        return Arrays.stream(values())
                .filter(piece -> piece.word().equals(word))
                .findFirst();
    }
}
