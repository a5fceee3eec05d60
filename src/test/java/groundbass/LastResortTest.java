package groundbass;

import static org.assertj.core.api.Assertions.assertThat;

import java.sql.SQLException;
import java.util.concurrent.ExecutionException;
import org.junit.jupiter.api.Test;

/** Which faults end the process; that they do is the affair of a process of its own. */
class LastResortTest {
    // sysexits.h of 4.3BSD: EX_SOFTWARE 70, EX_IOERR 74
    private static final int EX_SOFTWARE = 70;
    private static final int EX_IOERR = 74;

    @Test
    void aHeapThatIsUsedUpEndsTheProcessHoweverDeepItLies() {
        assertThat(LastResort.endOf(new OutOfMemoryError("Java heap space"))).isEqualTo(EX_SOFTWARE);
        var wrapped = new IllegalStateException(new ExecutionException(new OutOfMemoryError("Java heap space")));
        assertThat(LastResort.endOf(wrapped)).isEqualTo(EX_SOFTWARE);
    }

    @Test
    void aClassThatCannotBeLoadedAnyMoreEndsTheProcess() {
        assertThat(LastResort.endOf(new NoClassDefFoundError("Passwords"))).isEqualTo(EX_SOFTWARE);
    }

    @Test
    void aDatabaseThatHasClosedItselfEndsTheProcess() {
        // 90098: "The database has been closed", H2's list of error codes
        var closed = new SQLException("The database has been closed", "90098", 90098);
        assertThat(LastResort.endOf(new IllegalStateException(closed))).isEqualTo(EX_IOERR);
    }

    @Test
    void withEverythingElseTheProcessGoesOn() {
        assertThat(LastResort.endOf(new SQLException("connection refused", "08001")))
                .isZero();
        assertThat(LastResort.endOf(new StackOverflowError())).isZero();
        assertThat(LastResort.endOf(new IllegalStateException("ours"))).isZero();
    }
}
