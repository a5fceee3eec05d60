package groundbass.script.claims;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.score.Fraction;
import groundbass.score.Note;
import groundbass.score.Place;
import groundbass.score.Technique;
import java.util.Arrays;
import java.util.EnumSet;
import org.junit.jupiter.api.Test;

class MannerTest {
    /** A script has no word of ours for it, so what is said of it stays unread. */
    private static final EnumSet<Technique> UNREAD = EnumSet.of(Technique.LEFT_HAND);

    @Test
    void everyOtherTechniqueCanBeSaid() {
        var unsaid = Arrays.stream(Technique.values())
                .filter(technique -> Arrays.stream(Manner.values()).noneMatch(manner -> manner.fits(played(technique))))
                .toList();
        assertThat(unsaid).containsExactlyElementsOf(UNREAD);
    }

    private static Note played(Technique technique) {
        return Note.plucked(Fraction.ZERO, Fraction.of(1, 4), Place.of(2, 5), technique);
    }
}
