package groundbass.walkthrough;

import groundbass.score.Fraction;
import groundbass.walkthrough.stretch.Stretch;
import java.util.List;
import java.util.Optional;
import java.util.stream.Stream;

/**
 * Some beats of a bar are played as the same beats of an earlier bar, there or elsewhere on the neck; the others are not.
 *
 * @param on    the earlier bar, and how the beats lie to it
 * @param beats those that are played so, in order; between two stretches of them something else is played
 */
record Leaning(Earlier on, List<Stretch> beats) {
    Leaning {
        beats = List.copyOf(beats);
    }

    /** Stretches of the bar, those that are played as before joined. */
    List<Stretch> joined(List<Stretch> stretches) {
        return stretches.stream().flatMap(this::joined).toList();
    }

    private Stream<Stretch> joined(Stretch stretch) {
        return covering(stretch.from())
                .map(whole -> Stream.of(whole).filter(each -> each.from().equals(stretch.from())))
                .orElse(Stream.of(stretch));
    }

    /** Whether some of a stretch of the bar is played as before. */
    boolean touches(Stretch stretch) {
        return beats.stream()
                .anyMatch(each ->
                        each.from().isBefore(stretch.to()) && stretch.from().isBefore(each.to()));
    }

    /** The beats played as before that a moment of the bar belongs to. */
    Optional<Stretch> covering(Fraction at) {
        return beats.stream().filter(each -> each.contains(at)).findFirst();
    }
}
