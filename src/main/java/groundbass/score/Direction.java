package groundbass.score;

import java.util.Objects;

/** Something said at a moment of a bar rather than at one note. */
public sealed interface Direction {
    /** From the start of the bar. */
    Fraction at();

    /** The same at another moment. */
    Direction movedTo(Fraction moment);

    /** A new loudness. */
    record Loudness(Fraction at, Dynamic dynamic) implements Direction {
        public Loudness {
            Objects.requireNonNull(at);
            Objects.requireNonNull(dynamic);
        }

        @Override
        public Loudness movedTo(Fraction moment) {
            return new Loudness(moment, dynamic);
        }
    }

    /** Growing louder or softer from here to the next dynamic or hairpin; to the end of the bar where none follows. */
    record Hairpin(Fraction at, Way way) implements Direction {
        public Hairpin {
            Objects.requireNonNull(at);
            Objects.requireNonNull(way);
        }

        @Override
        public Hairpin movedTo(Fraction moment) {
            return new Hairpin(moment, way);
        }

        /** Louder or softer. */
        public enum Way {
            CRESCENDO("cresc"),
            DIMINUENDO("dim");

            private final String word;

            Way(String word) {
                this.word = word;
            }

            /** The word that line text uses. */
            public String word() {
                return word;
            }
        }
    }

    /** Words above the staff, of one line, without double quotes. */
    record Words(Fraction at, String text) implements Direction {
        public static final int LONGEST = 200;

        public Words {
            Objects.requireNonNull(at);
            if (!isText(text)) {
                throw new IllegalArgumentException("words are one line without double quotes: " + text);
            }
        }

        @Override
        public Words movedTo(Fraction moment) {
            return new Words(moment, text);
        }

        public static boolean isText(String text) {
            return !text.isBlank()
                    && text.length() <= LONGEST
                    && text.indexOf('"') < 0
                    && text.chars().noneMatch(Character::isISOControl);
        }
    }
}
