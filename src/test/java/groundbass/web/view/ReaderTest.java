package groundbass.web.view;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.time.ZoneId;
import java.util.Locale;
import org.junit.jupiter.api.Test;

class ReaderTest {
    private static final Reader ENGLISH = new Reader(Locale.ENGLISH, ZoneId.of("Europe/Vienna"));
    private static final Reader GERMAN = new Reader(Locale.GERMAN, ZoneId.of("Europe/Vienna"));

    /** IEC 80000-13: the prefixes k, M, G stand for powers of 1000. */
    @Test
    void writesSizesAsTheLanguageDoes() {
        assertThat(ENGLISH.size(0)).isEqualTo("0 bytes");
        assertThat(ENGLISH.size(999)).isEqualTo("999 bytes");
        assertThat(ENGLISH.size(1_000)).isEqualTo("1 kB");
        assertThat(ENGLISH.size(1_550_000)).isEqualTo("1.6 MB");
        assertThat(GERMAN.size(1_550_000)).isEqualTo("1,6 MB");
        assertThat(GERMAN.size(60_000_000)).isEqualTo("60 MB");
    }

    /** Europe/Vienna is one hour ahead of UTC in winter (IANA time zone database). */
    @Test
    void writesTimesInTheSitesZone() {
        var lateInUtc = Instant.parse("2026-02-02T23:30:00Z");
        assertThat(ENGLISH.date(lateInUtc)).isEqualTo("February 3, 2026");
        assertThat(GERMAN.date(lateInUtc)).isEqualTo("3. Februar 2026");
        assertThat(GERMAN.moment(lateInUtc)).contains("3. Februar 2026", "00:30", "MEZ");
    }

    @Test // CLDR: grouping and percent of English and German, as the JDK carries them
    void writesNumbersAsTheLanguageDoes() {
        assertThat(ENGLISH.number(12_345)).isEqualTo("12,345");
        assertThat(GERMAN.number(12_345)).isEqualTo("12.345");
        assertThat(ENGLISH.percent(0.256)).isEqualTo("26%");
    }
}
