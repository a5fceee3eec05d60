package groundbass.web.answer;

import static org.assertj.core.api.Assertions.assertThat;

import com.aayushatharva.brotli4j.decoder.Decoder;
import groundbass.web.Stage;
import groundbass.web.shell.Role;
import io.restassured.RestAssured;
import io.restassured.config.DecoderConfig;
import io.restassured.response.Response;
import io.restassured.specification.RequestSpecification;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.Test;

class CachedResponseTest {
    private static final String TEXT = "1    E5\n1&   E5, E8\n".repeat(200);
    private static final CachedResponse LONG = CachedResponse.of(TEXT.getBytes(StandardCharsets.UTF_8), "text/plain");
    private static final CachedResponse SHORT = CachedResponse.of(new byte[] {'E', '5'}, "text/plain");
    private static final CachedResponse SOUND = CachedResponse.of(new byte[50_000], "audio/mpeg");

    static final Stage stage = Stage.with(routes -> {
        routes.get("/long", Role.ANYONE, ctx -> LONG.send(ctx, CachedResponse.ASK_AGAIN));
        routes.get("/short", Role.ANYONE, ctx -> SHORT.send(ctx, CachedResponse.ASK_AGAIN));
        routes.get("/sound", Role.ANYONE, ctx -> SOUND.send(ctx, CachedResponse.FOR_GOOD));
    });

    @AfterAll
    static void close() {
        stage.close();
    }

    @Test
    void longTextIsCompressedForWhoReadsThat() {
        var answer = ask("/long", "deflate, gzip");
        assertThat(answer.header("Content-Encoding")).isEqualTo("gzip");
        assertThat(Integer.parseInt(answer.header("Content-Length"))).isLessThan(TEXT.length() / 10);
        assertThat(answer.header("Vary")).contains("Accept-Encoding");
    }

    /** RFC 7932, read by the decoder of the same library, which is the reference implementation. */
    @Test
    void brotliGoesBeforeGzipWhereItIsRead() throws IOException {
        for (String accepted : List.of("gzip, deflate, br", "br", "br;q=0.9, gzip")) {
            var answer = ask("/long", accepted);
            assertThat(answer.header("Content-Encoding")).as(accepted).isEqualTo("br");
            var read = Decoder.decompress(answer.asByteArray()).getDecompressedData();
            assertThat(new String(read, StandardCharsets.UTF_8)).isEqualTo(TEXT);
        }
        for (String accepted : List.of("gzip, br;q=0", "gzip, abr, brx")) {
            assertThat(ask("/long", accepted).header("Content-Encoding"))
                    .as(accepted)
                    .isEqualTo("gzip");
        }
    }

    /** RFC 9110 section 12.5.3: a weight of 0 means "not acceptable"; no field here means "as it is". */
    @Test
    void whoDoesNotReadThatGetsItPlain() {
        for (String accepted : new String[] {"identity", "gzip;q=0", "gzip; q=0.000, br;q=0"}) {
            var answer = ask("/long", accepted);
            assertThat(answer.header("Content-Encoding")).as(accepted).isNull();
            assertThat(answer.asString()).isEqualTo(TEXT);
        }
        assertThat(ask("/long", "gzip;q=0.5").header("Content-Encoding")).isEqualTo("gzip");
    }

    /** RFC 9110 section 8.8.3.3: each coding of a representation has its own strong tag. */
    @Test
    void eachCodingHasItsOwnTag() {
        String compressed = ask("/long", "gzip").header("ETag");
        String plain = ask("/long", "identity").header("ETag");
        assertThat(Set.of(compressed, plain, ask("/long", "br").header("ETag"))).hasSize(3);
        assertThat(request("gzip")
                        .header("If-None-Match", compressed)
                        .get("/long")
                        .statusCode())
                .isEqualTo(304);
        assertThat(request("identity")
                        .header("If-None-Match", compressed)
                        .get("/long")
                        .statusCode())
                .isEqualTo(200);
    }

    @Test
    void whatIsShortOrCompressedAlreadyStaysAsItIs() {
        assertThat(ask("/short", "gzip").header("Content-Encoding")).isNull();
        assertThat(ask("/sound", "gzip").header("Content-Encoding")).isNull();
        assertThat(ask("/sound", "gzip").header("Content-Length")).isEqualTo("50000");
    }

    private static Response ask(String path, String accepted) {
        return request(accepted).get(path);
    }

    private static RequestSpecification request(String accepted) {
        // else the client writes a field of its own and unpacks what it gets
        var asItIs =
                RestAssured.config().decoderConfig(DecoderConfig.decoderConfig().noContentDecoders());
        return stage.request().config(asItIs).header("Accept-Encoding", accepted);
    }
}
