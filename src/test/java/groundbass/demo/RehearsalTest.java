package groundbass.demo;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatCode;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class RehearsalTest {
    private final List<String> played = new ArrayList<>();

    @Test
    void endsAfterWhatWasBegun() {
        var rehearsal = new Rehearsal[1];
        rehearsal[0] = new Rehearsal(() -> List.of(
                () -> {
                    played.add("one");
                    rehearsal[0].end();
                },
                () -> played.add("two")));
        rehearsal[0].play();
        assertThat(played).containsExactly("one");
    }

    @Test
    void whatFailsEndsItAndIsNobodysFault() {
        var rehearsal = new Rehearsal(() -> List.of(
                () -> {
                    throw new IllegalStateException("cannot be drawn");
                },
                () -> played.add("two")));
        assertThatCode(rehearsal::play).doesNotThrowAnyException();
        assertThat(played).isEmpty();
        assertThatCode(new Rehearsal(() -> {
                    throw new IllegalStateException("cannot be read");
                })::play)
                .doesNotThrowAnyException();
    }
}
