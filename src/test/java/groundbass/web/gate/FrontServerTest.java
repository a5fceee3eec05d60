package groundbass.web.gate;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.web.Stage;
import groundbass.web.shell.Installation;
import groundbass.web.shell.PrincipalResolver;
import groundbass.web.shell.Role;
import java.net.URI;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Front servers append the address that they see to X-Forwarded-For (common practice, described in the informative part
 * of RFC 7239 section 7.4); whatever stands before it comes from the caller.
 */
class FrontServerTest {
    private static String seen(int hops, String... headers) {
        var installation = new Installation(URI.create("http://localhost:8420"), false, false, hops, Optional.empty());
        try (var stage = Stage.at(
                installation,
                PrincipalResolver.NONE,
                pages -> List.of(routes -> routes.get(
                        "/seen", Role.ANYONE, ctx -> ctx.result(ctx.scheme() + " " + ctx.ip() + " " + ctx.host()))))) {
            var request = stage.request();
            for (int i = 0; i < headers.length; i += 2) {
                request.header(headers[i], headers[i + 1]);
            }
            return request.get("/seen").asString().replace(":" + stage.port(), "");
        }
    }

    @Test
    void withoutAFrontServerNobodySaysWhereTheyComeFrom() {
        assertThat(seen(
                        0,
                        "X-Forwarded-For",
                        "203.0.113.9",
                        "Forwarded",
                        "for=203.0.113.9",
                        "X-Forwarded-Proto",
                        "https"))
                .isEqualTo("http 127.0.0.1 127.0.0.1");
    }

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "1 | 203.0.113.9 | 203.0.113.9",
                "1 | 198.51.100.1, 203.0.113.9 | 203.0.113.9",
                "1 | 198.51.100.1,, 10.0.0.1, 203.0.113.9 | 203.0.113.9",
                "2 | 198.51.100.1, 203.0.113.9, 10.0.0.1 | 203.0.113.9",
                "2 | 203.0.113.9 | 203.0.113.9",
                "1 | 2001:db8::7 | [2001:db8::7]"
            })
    void theCallerIsWhomTheFirstOfOurFrontServersSaw(int hops, String header, String caller) {
        assertThat(seen(hops, "X-Forwarded-For", header)).isEqualTo("http " + caller + " 127.0.0.1");
    }

    @Test
    void severalLinesAreOneList() {
        assertThat(seen(1, "X-Forwarded-For", "198.51.100.1", "X-Forwarded-For", "203.0.113.9"))
                .isEqualTo("http 203.0.113.9 127.0.0.1");
    }

    @Test
    void noOtherHeaderIsBelieved() {
        assertThat(seen(
                        1,
                        "X-Forwarded-For",
                        "203.0.113.9",
                        "Forwarded",
                        "for=198.51.100.1;host=evil.example;proto=https",
                        "X-Forwarded-Host",
                        "evil.example",
                        "X-Forwarded-Server",
                        "evil.example",
                        "X-Forwarded-Proto",
                        "https"))
                .isEqualTo("https 203.0.113.9 127.0.0.1");
    }
}
