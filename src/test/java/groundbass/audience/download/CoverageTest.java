package groundbass.audience.download;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.BitSet;
import java.util.Random;
import org.junit.jupiter.api.Test;

class CoverageTest {
    @Test
    void joinsSpansThatTouchAndKeepsOthersApart() {
        Coverage apart = Coverage.NOTHING.plus(new ByteSpan(200, 300)).plus(new ByteSpan(0, 100));
        assertThat(apart).hasToString("0-100,200-300");
        assertThat(apart.isAllOf(300)).isFalse();
        Coverage joined = apart.plus(new ByteSpan(100, 200));
        assertThat(joined).hasToString("0-300");
        assertThat(joined.isAllOf(300)).isTrue();
        assertThat(joined.isAllOf(301)).isFalse();
    }

    @Test
    void anEmptyFileIsCoveredByNothing() {
        assertThat(Coverage.NOTHING.isAllOf(0)).isTrue();
        assertThat(Coverage.NOTHING.isAllOf(1)).isFalse();
        assertThat(Coverage.NOTHING.plus(new ByteSpan(5, 5))).isEqualTo(Coverage.NOTHING);
    }

    /** Against a set that remembers every byte on its own. */
    @Test
    void remembersWhatASetOfBytesRemembers() {
        long seed = System.nanoTime();
        var random = new Random(seed);
        for (int run = 0; run < 300; run++) {
            var bytes = new BitSet();
            Coverage coverage = Coverage.NOTHING;
            for (int step = 0; step < 12; step++) {
                int from = random.nextInt(60);
                int until = from + random.nextInt(12);
                bytes.set(from, until);
                coverage =
                        Coverage.parse(coverage.plus(new ByteSpan(from, until)).toString());
                assertThat(coverage).as("seed %d", seed).hasToString(spans(bytes));
                int size = bytes.length();
                assertThat(coverage.isAllOf(size)).as("seed %d", seed).isEqualTo(bytes.cardinality() == size);
            }
        }
    }

    @Test
    void fitsItsColumnHoweverScatteredTheRequests() {
        Coverage coverage = Coverage.NOTHING;
        long far = Long.MAX_VALUE - 10_000;
        for (int i = 0; i < 1000; i++) coverage = coverage.plus(ByteSpan.of(far + 3L * i, 1 + i % 2));
        assertThat(coverage.spans()).hasSize(Coverage.MOST);
        assertThat(coverage.toString().length()).isLessThanOrEqualTo(2000);
    }

    @Test
    void aSpanRunsForward() {
        assertThatThrownBy(() -> new ByteSpan(-1, 3)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new ByteSpan(3, 2)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> ByteSpan.of(5, Long.MAX_VALUE)).isInstanceOf(ArithmeticException.class);
    }

    private static String spans(BitSet bytes) {
        var text = new StringBuilder();
        for (int from = bytes.nextSetBit(0); from >= 0; ) {
            int until = bytes.nextClearBit(from);
            text.append(text.isEmpty() ? "" : ",").append(from).append('-').append(until);
            from = bytes.nextSetBit(until);
        }
        return text.toString();
    }
}
