package groundbass.web.answer;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class ByteRangeTest {
    private static final long TEN_THOUSAND = 10_000;

    /** The examples of RFC 9110 section 14.1.2, "assuming a representation of length 10000". */
    @ParameterizedTest
    @CsvSource({
        "bytes=0-499, 0, 499",
        "bytes=500-999, 500, 999",
        "bytes=-500, 9500, 9999",
        "bytes=9500-, 9500, 9999",
        "bytes=0-0, 0, 0"
    })
    void readsTheExamplesOfTheStandard(String header, long first, long last) {
        assertThat(of(header)).isEqualTo(new ByteRange.Part(first, last, TEN_THOUSAND));
    }

    /** The same section: a last position beyond the end means the end; a longer suffix means all. */
    @ParameterizedTest
    @CsvSource({"bytes=9000-20000, 9000", "bytes=-20000, 0", "BYTES=9000-, 9000"})
    void endsAtTheEndOfTheFile(String header, long first) {
        assertThat(of(header)).isEqualTo(new ByteRange.Part(first, TEN_THOUSAND - 1, TEN_THOUSAND));
    }

    /** Section 14.1.1: "last-pos less than first-pos" is invalid; section 14.2: an invalid range may be ignored. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "",
                "bytes=5-2",
                "bytes=-",
                "bytes=a-b",
                "lines=0-3",
                "bytes=0-1,5-6",
                "bytes=0-0,-1",
                "bytes=99999999999999999999-"
            })
    void ignoresWhatItNeedNotHonour(String header) {
        assertThat(of(header)).isEqualTo(new ByteRange.Whole(TEN_THOUSAND));
    }

    /** Section 15.5.17: a first position beyond the end, or a suffix of nothing. */
    @ParameterizedTest
    @ValueSource(strings = {"bytes=10000-", "bytes=10000-10001", "bytes=-0"})
    void knowsWhatCannotBeSatisfied(String header) {
        assertThat(of(header)).isEqualTo(new ByteRange.Unsatisfiable(TEN_THOUSAND));
    }

    /** Section 14.4: {@code Content-Range: bytes 42-1233/1234} and {@code bytes *}{@code /1234} are its examples. */
    @Test
    void writesContentRangeAsTheStandardDoes() {
        assertThat(new ByteRange.Part(42, 1233, 1234).contentRange()).isEqualTo("bytes 42-1233/1234");
        assertThat(new ByteRange.Unsatisfiable(1234).contentRange()).isEqualTo("bytes */1234");
    }

    @Test
    void aPartLiesInsideItsFile() {
        assertThatThrownBy(() -> new ByteRange.Part(0, 10, 10)).isInstanceOf(IllegalArgumentException.class);
    }

    private static ByteRange of(String header) {
        return ByteRange.of(Optional.of(header), TEN_THOUSAND);
    }
}
