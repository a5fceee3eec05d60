package groundbass.fuzz;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Set;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** A short run of every target with one seed; {@link Fuzz} runs on with others. */
class FuzzTest {
    private static final long SEED = 20_301;
    private static final int INPUTS = 150;

    static Set<String> targets() {
        return Targets.ALL.keySet();
    }

    @ParameterizedTest
    @MethodSource("targets")
    void spoiledInputsGetAnAnswer(String name) {
        System.out.println("seed " + SEED);
        try (var target = Targets.ALL.get(name).get()) {
            var fuzzing = new Fuzzing(target, SEED);
            for (int i = 0; i < INPUTS; i++) {
                fuzzing.runOnce();
            }
            assertThat(fuzzing.inputs()).isEqualTo(INPUTS);
            assertThat(fuzzing.found()).isEmpty();
        }
    }
}
