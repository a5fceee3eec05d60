package groundbass.catalog;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.ZoneId;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Names of the IANA time zone database. */
class ZoneNamesTest {
    @ParameterizedTest
    @CsvSource({
        "Europe/Vienna, Europe/Vienna",
        "' europe/vienna ', Europe/Vienna",
        "vienna, Europe/Vienna",
        "New York, America/New_York",
        "Argentina/Ushuaia, America/Argentina/Ushuaia",
        "utc, UTC",
        "Z, Z"
    })
    void aZoneIsReadByItsNameOrItsPlace(String typed, String zone) {
        assertThat(ZoneNames.read(typed)).contains(ZoneId.of(zone));
    }

    /** Louisville stands under America and, since 1999, under America/Kentucky as well. */
    @ParameterizedTest
    @ValueSource(strings = {"", "+02:00", "Atlantis", "Louisville", "ienna", "/Vienna"})
    void whatIsNoZoneOrMoreThanOneIsNotGuessed(String typed) {
        assertThat(ZoneNames.read(typed)).isEmpty();
    }

    @Test
    void whatIsOfferedCanBeRead() {
        assertThat(ZoneNames.all()).hasSizeGreaterThan(400).allSatisfy(name -> assertThat(ZoneNames.read(name))
                .contains(ZoneId.of(name)));
    }
}
