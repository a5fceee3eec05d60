package groundbass.text;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.Locale;
import java.util.Optional;
import java.util.Random;
import org.junit.jupiter.api.Test;

/** Which wishes are read is checked where pages are asked for; here, that none of them is a fault. */
class LanguagesTest {
    private static final String SIGNS = "--**,,;;=q01.adeEn \t_";

    @Test
    void noWishIsAFault() {
        long seed = new Random().nextLong();
        var random = new Random(seed);
        int spoken = 0;
        for (int i = 0; i < 200_000; i++) {
            var wish = new StringBuilder();
            for (int n = random.nextInt(12); n >= 0; n--) {
                wish.append(SIGNS.charAt(random.nextInt(SIGNS.length())));
            }
            var locale = Languages.spoken(Optional.of(wish.toString()), Locale.ENGLISH);
            assertThat(Languages.SPOKEN).as("seed %d: %s", seed, wish).contains(locale);
            spoken += locale.equals(Locale.GERMAN) ? 1 : 0;
        }
        assertThat(spoken).as("seed %d", seed).isPositive();
    }
}
