package groundbass.web.answer;

import static org.assertj.core.api.Assertions.assertThat;

import groundbass.web.Stage;
import groundbass.web.shell.Role;
import java.nio.charset.StandardCharsets;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class MediaTypesTest {
    /** OWASP ASVS 5.0, 4.1.1: text, XML and what is built on it name their encoding; the types as IANA lists them. */
    @ParameterizedTest
    @CsvSource({
        "text/css, text/css; charset=utf-8",
        "image/svg+xml, image/svg+xml; charset=utf-8",
        "application/vnd.recordare.musicxml+xml, application/vnd.recordare.musicxml+xml; charset=utf-8",
        "application/xml, application/xml; charset=utf-8",
        "text/plain; charset=us-ascii, text/plain; charset=us-ascii",
        "application/vnd.recordare.musicxml, application/vnd.recordare.musicxml",
        "application/pdf, application/pdf",
        "application/json, application/json"
    })
    void textNamesItsEncoding(String type, String sent) {
        assertThat(MediaTypes.encoded(type)).isEqualTo(sent);
    }

    @Test
    void whatIsKeptAndWhatIsSentAsAFileNamesIt() {
        byte[] drawing = "<svg/>".getBytes(StandardCharsets.UTF_8);
        try (var stage = Stage.with(routes -> {
            routes.get("/kept", Role.ANYONE, ctx -> CachedResponse.of(drawing, "image/svg+xml")
                    .send(ctx, CachedResponse.ASK_AGAIN));
            routes.get("/file", Role.ANYONE, ctx -> FileAnswer.of(drawing, "image/svg+xml", new EntityTag("v1"))
                    .send(ctx));
        })) {
            for (String path : new String[] {"/kept", "/file"}) {
                assertThat(stage.request().get(path).contentType())
                        .as(path)
                        .isEqualToIgnoringCase("image/svg+xml; charset=utf-8");
            }
        }
    }
}
