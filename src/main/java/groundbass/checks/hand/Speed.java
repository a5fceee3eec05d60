package groundbass.checks.hand;

import groundbass.performance.Played;
import groundbass.score.Technique;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;

/**
 * How many notes a second a way of playing allows: at ease, to those who practise it, and to nearly nobody beyond
 * (rule: speed-limits).
 */
enum Speed {
    ONE_FINGER("one-finger", 4, 6, 8),
    TWO_FINGERS("two-fingers", 6.7, 10, 13.3),
    PICK("pick", 8, 12, 16),
    SLAP("slap", 4, 6.7, 8),
    POP("pop", 3, 4.5, 6),
    SLAP_AND_POP("slap-and-pop", 5, 8, 10.7),
    DOUBLE_THUMB("double-thumb", 6.7, 10.7, 13.3),
    LEGATO("legato", 4, 7, 9),
    WITH_LEGATO("with-legato", 8, 12, 14.7),
    TAP("tap", 8, 12, 16),
    LEFT_HAND("left-hand", 5, 8, 10.7);

    private final String word;
    private final double easy;
    private final double fast;
    private final double most;

    Speed(String word, double easy, double fast, double most) {
        this.word = word;
        this.easy = easy;
        this.fast = fast;
        this.most = most;
    }

    double easy() {
        return easy;
    }

    double fast() {
        return fast;
    }

    double most() {
        return most;
    }

    /** The key of what is played so, in the message bundle. */
    String messageKey() {
        return "checks.speed." + word;
    }

    /** The limits for notes one after the other; empty where nobody has told any. */
    static Optional<Speed> of(List<Played> notes) {
        Set<Technique> struck = EnumSet.noneOf(Technique.class);
        notes.forEach(note -> note.note().pluck().ifPresent(struck::add));
        boolean legato = notes.stream().anyMatch(note -> note.note().pluck().isEmpty());
        if (struck.isEmpty()) {
            return Optional.of(LEGATO);
        }
        if (legato) {
            return Optional.of(WITH_LEGATO);
        }
        return struck.size() == 1 ? alone(struck.iterator().next()) : mixed(struck);
    }

    private static Optional<Speed> alone(Technique technique) {
        return switch (technique) {
            case SLAP -> Optional.of(SLAP);
            case POP -> Optional.of(POP);
            case THUMB, INDEX, MIDDLE, THUMB_DOWN -> Optional.of(ONE_FINGER);
            case FINGER, MUTE, PLUCK -> Optional.of(TWO_FINGERS);
            case THUMB_UP -> Optional.of(DOUBLE_THUMB);
            case PICK -> Optional.of(PICK);
            case TAP -> Optional.of(TAP);
            case LEFT_HAND -> Optional.of(LEFT_HAND);
            case RAKE -> Optional.empty();
        };
    }

    private static Optional<Speed> mixed(Set<Technique> struck) {
        if (struck.contains(Technique.RAKE)) {
            return Optional.empty();
        }
        if (struck.contains(Technique.TAP)) {
            return Optional.of(TAP);
        }
        if (struck.contains(Technique.THUMB_UP) || struck.contains(Technique.LEFT_HAND)) {
            return Optional.of(DOUBLE_THUMB);
        }
        boolean thumbs = struck.contains(Technique.SLAP) || struck.contains(Technique.POP);
        return Optional.of(thumbs ? SLAP_AND_POP : TWO_FINGERS);
    }
}
