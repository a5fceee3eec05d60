package groundbass.release;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.identity.Sha256;
import groundbass.store.fault.DamagedFileException;
import groundbass.store.fault.FilesAway;
import groundbass.text.Messages;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.FileSystemException;
import java.nio.file.NoSuchFileException;
import java.sql.SQLException;
import java.util.List;
import java.util.Locale;
import java.util.concurrent.CompletionException;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

class BuildFailureTest {
    private static final String PLACE = "/srv/site/files/ab/abcdef";

    /** Texts of full disks: POSIX.1-2017, "Error Numbers", ENOSPC, and EDQUOT, as the C libraries of Linux and macOS have them. */
    static Stream<Arguments> faults() {
        return Stream.of(
                Arguments.of(new IOException("No space left on device"), BuildState.Failure.NO_ROOM),
                Arguments.of(new FileSystemException(PLACE, null, "Disk quota exceeded"), BuildState.Failure.NO_ROOM),
                Arguments.of(new OutOfMemoryError("Java heap space"), BuildState.Failure.NO_MEMORY),
                Arguments.of(new FilesAway(PLACE, "connection refused"), BuildState.Failure.FILES_AWAY),
                Arguments.of(new SQLException("closed", "08003"), BuildState.Failure.DATABASE_AWAY),
                Arguments.of(new NoSuchFileException(PLACE), BuildState.Failure.FILE_GONE),
                Arguments.of(new DamagedFileException(Sha256.of(new byte[1])), BuildState.Failure.FILE_GONE),
                Arguments.of(new StackOverflowError(), BuildState.Failure.OTHER),
                Arguments.of(new SQLException("no such column", "42703"), BuildState.Failure.OTHER),
                Arguments.of(new IllegalStateException(), BuildState.Failure.OTHER));
    }

    @ParameterizedTest
    @MethodSource("faults")
    void aFaultIsToldByWhatThereIsToDo(Throwable fault, BuildState.Failure failure) {
        assertThat(BuildState.Failure.of(fault)).isEqualTo(failure);
    }

    /** A thread of many has its faults wrapped, and so have streams. */
    @ParameterizedTest
    @MethodSource("faults")
    void aFaultThatIsWrappedIsFound(Throwable fault, BuildState.Failure failure) {
        assertThat(BuildState.Failure.of(new CompletionException(new IllegalStateException("step 7", fault))))
                .isEqualTo(failure);
        if (fault instanceof IOException e) {
            assertThat(BuildState.Failure.of(new UncheckedIOException(e))).isEqualTo(failure);
        }
    }

    @Test
    void faultsThatNameEachOtherHaveAnEnd() {
        var one = new IllegalStateException("one");
        one.initCause(new IllegalStateException("other", one));
        assertThat(BuildState.Failure.of(one)).isEqualTo(BuildState.Failure.OTHER);
    }

    @Test
    void whatIsStoredIsReadBack() {
        assertThat(BuildState.Failure.values())
                .allSatisfy(failure ->
                        assertThat(BuildState.Failure.stored(failure.value())).isEqualTo(failure));
    }

    /** Earlier versions stored what the fault said of itself. */
    @Test
    void whatAnEarlierVersionStoredIsNotRepeated() {
        assertThat(List.of("", "null", PLACE, "Java heap space"))
                .allSatisfy(text -> assertThat(BuildState.Failure.stored(text)).isEqualTo(BuildState.Failure.OTHER));
    }

    @Test
    void eachIsSaidInBothLanguages() {
        for (var locale : List.of(Locale.ENGLISH, Locale.GERMAN)) {
            assertThat(BuildState.Failure.values())
                    .extracting(failure -> Messages.of(locale).say(failure.message()))
                    .doesNotHaveDuplicates()
                    .allMatch(said -> said.endsWith("."));
        }
    }
}
