package groundbass.web.shell;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.catalog.settings.SiteSettings;
import groundbass.web.Stage;
import groundbass.web.gate.RawRequest;
import groundbass.web.general.GeneralPages;
import java.net.URI;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class HostNamesTest {
    /** RFC 9110 section 15.5.20: 421 where the host asked for is not one of this server's. */
    @ParameterizedTest
    @CsvSource({
        "true, grooves.example, 200",
        "true, GROOVES.example, 200",
        "true, 127.0.0.1:8420, 200",
        "true, [::1]:8420, 200",
        "true, localhost, 200",
        "true, evil.example, 421",
        "true, grooves.example.evil.example, 421",
        "true, grooves.example:8443, 421",
        "true, localhost.evil.example, 421",
        "true, 127.0.0.1.evil.example, 421",
        "false, anything.example, 200"
    })
    void onlyTheSitesOwnNameIsAnswered(boolean named, String host, int status) {
        var installation = new Installation(URI.create("https://grooves.example"), named, false, 0, Optional.empty());
        try (var stage = Stage.at(
                installation,
                PrincipalResolver.NONE,
                pages -> List.of(new GeneralPages(pages, () -> SiteSettings.USUAL)))) {
            String request =
                    "GET /privacy HTTP/1.1\r\nHost: " + host + "\r\nAccept: text/html\r\nConnection: close\r\n\r\n";
            assertThat(RawRequest.status(stage.port(), request)).isEqualTo(status);
        }
    }
}
