package groundbass.audience.statistics;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class CsvTest {
    /** RFC 4180 section 2: rule 1 (CRLF), 4 (commas), 5 and 6 (quotes around line ends and commas), 7 (doubled quotes). */
    @Test
    void quotesAsTheStandardShows() {
        assertThat(csv(List.of(List.of("aaa", "b\r\nbb", "ccc"), List.of("zzz", "yyy", "xxx"))))
                .isEqualTo("aaa,\"b\r\nbb\",ccc\r\nzzz,yyy,xxx\r\n");
        assertThat(csv(List.of(List.of("aaa", "b\"bb", "c,cc", "")))).isEqualTo("aaa,\"b\"\"bb\",\"c,cc\",\r\n");
    }

    /** The first characters that the OWASP page on CSV injection lists (from memory). */
    @ParameterizedTest
    @ValueSource(strings = {"=1+1", "+1", "-1", "@SUM(A1)", "\t=1", "\r=1", "  =1+1", "\uFF1D1+1"})
    void noCellIsRunAsAFormula(String cell) {
        assertThat(csv(List.of(List.of(cell))).replaceFirst("^\"", "")).startsWith("'");
    }

    @Test
    void ordinaryTextStaysAsItIs() {
        assertThat(csv(List.of(List.of("Slap-Übung 3 = leicht", "12", "", " "))))
                .isEqualTo("Slap-Übung 3 = leicht,12,, \r\n");
    }

    private static String csv(List<List<String>> rows) {
        var written = new StringBuilder();
        var csv = new Csv(written);
        rows.forEach(csv::row);
        return written.toString();
    }
}
