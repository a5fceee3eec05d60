package groundbass.identity;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.List;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SlugTest {
    private static final Slug FALLBACK = new Slug("fallback");

    /** Marks and compatibility forms after the Unicode Character Database's decompositions (UAX 15). */
    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "Lantern Street|lantern-street",
                "  Two -- Hands!  |two-hands",
                "Don't Rush|dont-rush",
                "Don’t Rush|dont-rush",
                "Übung für Ängstliche|ubung-fur-angstliche",
                "Straße|strasse",
                "Smørrebrød in Łódź|smorrebrod-in-lodz",
                "Çà et là|ca-et-la",
                "ﬁve ½ steps|five-1-2-steps",
                "ＡＢＣ №７|abc-no7",
                "F♯ and B♭|f-sharp-and-b-flat",
                "12/8 Blues|12-8-blues",
                "ISTANBUL ı İ|istanbul-i-i",
                "Ритм|fallback",
                "***|fallback",
                "''|fallback"
            })
    void aTitleBecomesPlainWords(String title, String slug) {
        assertThat(Slug.of(title, FALLBACK)).isEqualTo(new Slug(slug));
    }

    @Test
    void aLongTitleIsCutBetweenWords() {
        String title = "one two three four five six seven eight nine ten eleven twelve thirteen";
        assertThat(Slug.of(title, FALLBACK))
                .isEqualTo(new Slug("one-two-three-four-five-six-seven-eight-nine-ten-eleven"));
        assertThat(Slug.of("x".repeat(200), FALLBACK)).isEqualTo(new Slug("x".repeat(60)));
    }

    @Test
    void anyTextBecomesASlugThatStaysItself() {
        long seed = System.nanoTime();
        var random = new Random(seed);
        for (int i = 0; i < 4_000; i++) {
            String title = text(random);
            var slug = Slug.of(title, FALLBACK);
            assertThat(slug.value()).as("seed %d, %s", seed, title).matches("[a-z0-9]+(-[a-z0-9]+)*");
            assertThat(slug.value()).as("seed %d, %s", seed, title).hasSizeBetween(1, 60);
            assertThat(Slug.of(slug.value(), FALLBACK))
                    .as("seed %d, %s", seed, title)
                    .isEqualTo(slug);
            assertThat(slug.numbered(random.nextInt(9999)).value().length())
                    .as("seed %d, %s", seed, title)
                    .isLessThanOrEqualTo(60);
        }
    }

    private static String text(Random random) {
        int[] points = random.ints(random.nextInt(90), 0, 0x600).toArray();
        for (int i = 0; i < points.length; i++) {
            boolean plain = random.nextInt(3) > 0;
            points[i] = plain ? " abcXYZ-'9".charAt(points[i] % 10) : points[i] * (random.nextBoolean() ? 1 : 40);
        }
        return new String(points, 0, points.length);
    }

    @Test
    void aNumberedSlugEndsWithItsNumber() {
        assertThat(new Slug("tides").numbered(2)).isEqualTo(new Slug("tides-2"));
        assertThat(new Slug("x".repeat(60)).numbered(12)).isEqualTo(new Slug("x".repeat(57) + "-12"));
    }

    @Test
    void whatIsNoSlugIsRefused() {
        for (String text : List.of("", "-", "a-", "-a", "a--b", "A", "a b", "a/b", "..", "ä", "x".repeat(61))) {
            assertThat(Slug.parse(text)).as(text).isEmpty();
            assertThatThrownBy(() -> new Slug(text)).as(text).isInstanceOf(IllegalArgumentException.class);
        }
    }
}
