package groundbass.score;

import java.util.Objects;
import java.util.Optional;

/**
 * The signs of one bar that lead through a form otherwise than from left to right.
 *
 * @param segno whether the sign stands before this bar
 * @param coda whether the coda begins with this bar
 * @param toCoda whether the way to the coda leaves after this bar, once the jump was taken
 * @param fine whether the line ends after this bar, once the jump was taken
 * @param jump what sends the player back after this bar
 */
public record Roadmap(boolean segno, boolean coda, boolean toCoda, boolean fine, Optional<Jump> jump) {
    public static final Roadmap NONE = new Roadmap(false, false, false, false, Optional.empty());

    /** Back to where, and from there how far: once through, as it is written. */
    public record Jump(From from, Until until) {
        /** Its name in full, in the words of the trade: {@code da capo al fine}. */
        public String words() {
            return from.words + until.words;
        }

        /** Its usual abbreviation: {@code D.C. al Fine}. */
        public String printed() {
            return from.printed + until.printed;
        }
    }

    /** Where a jump leads. */
    public enum From {
        /** The head of the line. */
        CAPO("da capo", "D.C."),
        /** The sign. */
        SEGNO("dal segno", "D.S.");

        private final String words;
        private final String printed;

        From(String words, String printed) {
            this.words = words;
            this.printed = printed;
        }
    }

    /** How far the line is played after a jump. */
    public enum Until {
        /** To its last bar. */
        END("", ""),
        /** To where it says fine. */
        FINE(" al fine", " al Fine"),
        /** To where the way to the coda leaves; the coda follows. */
        CODA(" al coda", " al Coda");

        private final String words;
        private final String printed;

        Until(String words, String printed) {
            this.words = words;
            this.printed = printed;
        }
    }

    public Roadmap {
        Objects.requireNonNull(jump);
    }

    public Roadmap withSegno() {
        return new Roadmap(true, coda, toCoda, fine, jump);
    }

    public Roadmap withCoda() {
        return new Roadmap(segno, true, toCoda, fine, jump);
    }

    public Roadmap withToCoda() {
        return new Roadmap(segno, coda, true, fine, jump);
    }

    public Roadmap withFine() {
        return new Roadmap(segno, coda, toCoda, true, jump);
    }

    public Roadmap with(Jump newJump) {
        return new Roadmap(segno, coda, toCoda, fine, Optional.of(newJump));
    }

    /** Whether anything parts this bar from the one written before it. */
    boolean isSeamBefore() {
        return segno || coda;
    }

    /** Whether anything parts this bar from the one written after it. */
    public boolean isSeamAfter() {
        return toCoda || fine || jump.isPresent();
    }
}
