package groundbass.site;

import static org.assertj.core.api.Assertions.assertThatCode;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.concurrent.atomic.AtomicReference;
import org.junit.jupiter.api.Test;

class DemonstrationTest {
    private static void away() {
        throw new IllegalStateException("the database has been closed");
    }

    /** A fault that nobody catches is logged as an error; a site that is stopped has none. */
    @Test
    void whatTheEndOfTheSiteBreaksOffIsNoFault() {
        var itself = new AtomicReference<Demonstration>();
        var stopped = new Demonstration(() -> {
            itself.get().close();
            away();
        });
        itself.set(stopped);
        assertThatCode(stopped::load).doesNotThrowAnyException();
    }

    @Test
    void whatFailsWhileTheSiteIsOpenIsTold() {
        assertThatThrownBy(new Demonstration(DemonstrationTest::away)::load).hasMessageContaining("closed");
    }
}
