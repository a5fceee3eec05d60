package groundbass.score;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.math.BigInteger;
import java.util.Collections;
import java.util.Random;
import org.junit.jupiter.api.Test;

class FractionTest {
    @Test
    void standsInLowestTerms() {
        assertThat(Fraction.of(6, 8)).isEqualTo(Fraction.of(3, 4)).hasToString("3/4");
        assertThat(Fraction.of(-4, 2)).hasToString("-2");
        assertThat(Fraction.of(0, 5)).isEqualTo(Fraction.ZERO);
    }

    @Test
    void refusesDenominatorsThatAreNotPositive() {
        assertThatThrownBy(() -> Fraction.of(1, 0)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> Fraction.of(1, -2)).isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void tripletsFillABeatExactly() {
        var triplet = Fraction.of(1, 12);
        assertThat(Fraction.sum(Collections.nCopies(3, triplet))).isEqualTo(Fraction.of(1, 4));
    }

    @Test
    void obeysTheLawsOfArithmetic() {
        long seed = 20261125;
        var random = new Random(seed);
        for (int i = 0; i < 1000; i++) {
            var a = any(random);
            var b = any(random);
            var c = any(random);
            assertThat(a.plus(b)).as("seed %d", seed).isEqualTo(b.plus(a));
            assertThat(a.plus(b).times(c))
                    .as("seed %d", seed)
                    .isEqualTo(a.times(c).plus(b.times(c)));
            assertThat(a.minus(b).plus(b)).as("seed %d", seed).isEqualTo(a);
            assertThat(a.compareTo(b)).as("seed %d", seed).isEqualTo(Double.compare(a.toDouble(), b.toDouble()));
        }
    }

    @Test
    void moduloLeavesWhatWholeStepsDoNotTake() {
        assertThat(Fraction.of(7, 8).modulo(Fraction.of(1, 4))).isEqualTo(Fraction.of(1, 8));
        assertThat(Fraction.of(-1, 8).modulo(Fraction.of(1, 4))).isEqualTo(Fraction.of(1, 8));
        assertThat(Fraction.of(3, 4).isOnGrid(Fraction.of(1, 4))).isTrue();
    }

    @Test
    void overflowIsAnErrorAndNeverAWrongTime() {
        var huge = Fraction.of(Long.MAX_VALUE, 1);
        assertThatThrownBy(() -> huge.plus(Fraction.ONE)).isInstanceOf(ArithmeticException.class);
    }

    private static Fraction any(Random random) {
        return Fraction.of(random.nextInt(2001) - 1000, 1 + random.nextInt(999));
    }

    @Test
    void everyFractionStandsInLowestTerms() {
        for (long under = 1; under <= 96; under++) {
            for (long over = -100; over <= 100; over++) {
                var fraction = Fraction.of(over, under);
                assertThat(fraction.numerator() * under).isEqualTo(over * fraction.denominator());
                assertThat(BigInteger.valueOf(fraction.numerator()).gcd(BigInteger.valueOf(fraction.denominator())))
                        .as("%d/%d", over, under)
                        .isEqualTo(BigInteger.ONE);
            }
        }
    }
}
