package groundbass.web.answer;

import static org.assertj.core.api.Assertions.assertThat;
import static org.hamcrest.Matchers.equalTo;
import static org.hamcrest.Matchers.nullValue;

import groundbass.identity.Sha256;
import groundbass.store.bucket.BlobBucket;
import groundbass.store.bucket.FileTurns;
import groundbass.store.bucket.ObjectServer;
import groundbass.web.Stage;
import groundbass.web.shell.Role;
import java.io.IOException;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.util.Optional;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Files of a bucket, which a reader has from there by an address of short life (Amazon S3 API, "Sharing with presigned URLs"). */
class SignedAddressTest {
    private static final byte[] CONTENT = "four strings, one page".getBytes(StandardCharsets.US_ASCII);
    private static final HttpClient READER = HttpClient.newHttpClient();

    private static BlockingQueue<String> told;
    private static URI store;
    private static Stage stage;

    @BeforeAll
    static void open() throws IOException {
        var server = ObjectServer.get();
        store = URI.create("http://localhost:" + server.relay().port());
        var blobs = BlobBucket.open(server.freshBucket(), new FileTurns(null, false), Clock.systemUTC());
        Sha256 kept = blobs.put(CONTENT).sha256();
        var answer = FileAnswer.of(blobs, kept, "text/html")
                .withDownloadName("Übung 1.html")
                .withHandOver(Optional.of(new SignedAddress(store)));
        stage = Stage.with(routes -> routes.get(
                "/file", Role.ANYONE, ctx -> answer.withTransfer(telling(told)).send(ctx)));
    }

    /** Each request tells the list of its own test: the end of one may be told a moment after its answer. */
    private static Transfer telling(BlockingQueue<String> told) {
        return new Transfer() {
            @Override
            public void starting(ByteRange range) {
                told.add("starting " + range);
            }

            @Override
            public void completed(long sent) {
                told.add("completed");
            }

            @Override
            public void handedOver() {
                told.add("handed over");
            }
        };
    }

    @AfterAll
    static void close() {
        stage.close();
    }

    @BeforeEach
    void forget() {
        told = new LinkedBlockingQueue<>();
    }

    private static HttpResponse<byte[]> fetch(String address) throws Exception {
        return READER.send(
                HttpRequest.newBuilder(URI.create(address)).build(), HttpResponse.BodyHandlers.ofByteArray());
    }

    @Test
    void aReaderIsSentOnAndHasTheFileUnderItsNameFromTheStore() throws Exception {
        var answer = stage.request().header("Sec-Fetch-Mode", "navigate").get("/file");
        assertThat(answer.statusCode()).isEqualTo(302);
        assertThat(told).containsExactly("starting Whole[size=" + CONTENT.length + "]", "handed over");
        // of the redirect nothing is kept, and it says nothing of the file
        answer.then()
                .header("Cache-Control", equalTo("no-store"))
                .header("ETag", nullValue())
                .header("Content-Disposition", nullValue());
        String address = answer.header("Location");
        // a minute, and nothing to bring along that a browser would not
        assertThat(address).startsWith(store + "/").contains("X-Amz-Expires=60&", "X-Amz-SignedHeaders=host&");

        var file = fetch(address);
        assertThat(file.statusCode()).isEqualTo(200);
        assertThat(file.body()).isEqualTo(CONTENT);
        assertThat(file.headers().firstValue("Content-Type").orElseThrow()).matches("text/html;\\s*charset=utf-8");
        assertThat(file.headers().firstValue("Content-Disposition"))
                .contains("attachment; filename=\"_bung 1.html\"; filename*=UTF-8''%C3%9Cbung%201.html");
    }

    /** A reader goes on with a part, as after a line that broke. */
    @Test
    void aPartIsHandedOverAsTheWholeIs() {
        assertThat(stage.request()
                        .header("Sec-Fetch-Mode", "navigate")
                        .header("Range", "bytes=5-9")
                        .get("/file")
                        .statusCode())
                .isEqualTo(302);
        assertThat(told).containsExactly("starting Part[first=5, last=9, size=" + CONTENT.length + "]", "handed over");
    }

    /** Programs and older browsers, whose players must not be sent on: W3C Fetch Metadata, whose section 2.2 has the modes. */
    @Test
    void whoDoesNotSayHowTheyAskHasTheFileFromHere() {
        assertThat(stage.request().get("/file").statusCode()).isEqualTo(200);
    }

    /** The policy of our pages lets scripts and players ask this site alone. */
    @Test
    void whatAPageFetchesComesFromHere() throws InterruptedException {
        var answer = stage.request().header("Sec-Fetch-Mode", "cors").get("/file");
        assertThat(answer.statusCode()).isEqualTo(200);
        assertThat(answer.asByteArray()).isEqualTo(CONTENT);
        assertThat(told.poll(10, TimeUnit.SECONDS)).isEqualTo("starting Whole[size=" + CONTENT.length + "]");
        assertThat(told.poll(10, TimeUnit.SECONDS))
                .as("a moment after the last byte")
                .isEqualTo("completed");
    }

    /** An address is signed for one method (RFC 9110 section 9.3.2: HEAD answers as GET would, without the bytes). */
    @Test
    void whatTakesNoByteIsAnsweredHere() {
        stage.request()
                .head("/file")
                .then()
                .statusCode(200)
                .header("Content-Length", equalTo(String.valueOf(CONTENT.length)))
                .header("Location", nullValue());
        assertThat(stage.request().header("Range", "bytes=900-").get("/file").statusCode())
                .isEqualTo(416);
        assertThat(told).isEmpty();
    }
}
