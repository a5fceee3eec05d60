package groundbass.web.answer;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.hamcrest.Matchers.equalTo;

import groundbass.identity.Sha256;
import groundbass.store.BlobFolder;
import groundbass.web.Stage;
import groundbass.web.shell.Role;
import groundbass.web.shell.Routes;
import io.javalin.http.Context;
import io.restassured.response.Response;
import java.io.IOException;
import java.io.InputStream;
import java.io.RandomAccessFile;
import java.net.Socket;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpResponse;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Clock;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.Random;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.LinkedBlockingQueue;
import java.util.concurrent.TimeUnit;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class FileAnswerTest {
    private static final EntityTag TAG = new EntityTag("v1");
    private static final byte[] CONTENT = content(10_000);
    // more than the buffers of both ends of a connection on this machine take, so that a sender must wait
    private static final int LARGE = 64_000_000;
    private static volatile BlockingQueue<String> told = new LinkedBlockingQueue<>();

    /** Tells the test whose request it is, even when the end of an answer is noticed late. */
    private static Transfer observer() {
        var ears = told;
        return new Transfer() {
            @Override
            public void starting(ByteRange range) {
                ears.add("starting " + range);
            }

            @Override
            public void completed(long sent) {
                ears.add("completed " + sent);
            }

            @Override
            public void brokenOff(long sent) {
                ears.add(sent < LARGE ? "broken off" : "broken off after everything");
            }

            @Override
            public void handedOver() {
                ears.add("handed over");
            }
        };
    }

    @TempDir
    static Path folder;

    static Stage stage;
    static Sha256 kept;
    static Sha256 shrinks;

    @BeforeAll
    static void open() throws IOException {
        var blobs = new BlobFolder(folder.resolve("kept"), Clock.systemUTC());
        kept = blobs.put(CONTENT).sha256();
        var large = blobs.put(new byte[LARGE]).sha256();
        var onDisk = stored(blobs, kept, "audio/mpeg");
        var inMemory = FileAnswer.of(CONTENT, "audio/mpeg", TAG).withDownloadName("Übung 1.mp3");
        var handed = onDisk.withHandOver(Optional.of(new SendfileOffload("/stored/", SendfileOffload.USUAL_HEADER)));
        var inFull = stored(blobs, large, "audio/wav");
        byte[] shrinking = new byte[LARGE];
        shrinking[0] = 1;
        shrinks = blobs.put(shrinking).sha256();
        var part = stored(blobs, shrinks, "application/zip");
        stage = Stage.with(routes -> {
            add(routes, "/disk", onDisk.withDownloadName("groove.mp3"));
            add(routes, "/memory", inMemory);
            add(routes, "/handed", handed);
            add(routes, "/large", inFull);
            add(routes, "/joined", FileAnswer.joined(List.of(onDisk, part), "application/zip", TAG));
            routes.get("/chunks", Role.ANYONE, ctx -> breakOff(ctx, 100_000));
            routes.get("/begun", Role.ANYONE, ctx -> breakOff(ctx, 1_000));
        });
    }

    private static FileAnswer stored(BlobFolder blobs, Sha256 file, String mediaType) throws IOException {
        return new FileAnswer(
                FileAnswer.stored(blobs, file),
                mediaType,
                TAG,
                Optional.empty(),
                "private, no-cache",
                Transfer.UNOBSERVED,
                Optional.empty());
    }

    private static void breakOff(Context ctx, int bytes) throws IOException {
        ctx.contentType("application/zip").header("Content-Disposition", "attachment; filename=\"all.zip\"");
        ctx.outputStream().write(new byte[bytes]);
        throw new IOException("a file of it is damaged");
    }

    private static void add(Routes routes, String path, FileAnswer answer) {
        routes.get(path, Role.ANYONE, ctx -> answer.withTransfer(observer()).send(ctx));
    }

    @AfterAll
    static void close() {
        stage.close();
    }

    @BeforeEach
    void forget() {
        told = new LinkedBlockingQueue<>();
    }

    @ParameterizedTest
    @ValueSource(strings = {"/disk", "/memory"})
    void sendsAllOfItWithItsLength(String path) throws Exception {
        var answer = stage.request().get(path);
        assertThat(answer.statusCode()).isEqualTo(200);
        assertThat(answer.header("Content-Length")).isEqualTo("10000");
        assertThat(answer.header("Accept-Ranges")).isEqualTo("bytes");
        assertThat(answer.header("Content-Encoding")).isNull();
        assertThat(answer.asByteArray()).isEqualTo(CONTENT);
        assertThat(List.of(next(), next())).containsExactly("starting Whole[size=10000]", "completed 10000");
    }

    /** RFC 9110 section 15.3.7: 206, Content-Range, and exactly these bytes; examples of section 14.1.2. */
    @ParameterizedTest
    @ValueSource(strings = {"/disk", "/memory"})
    void sendsAPart(String path) {
        assertPart(ranged(path, "bytes=500-999"), 500, 999);
        assertPart(ranged(path, "bytes=-500"), 9_500, 9_999);
        assertPart(ranged(path, "bytes=9500-"), 9_500, 9_999);
        assertPart(ranged(path, "bytes=0-0"), 0, 0);
        assertThat(told).contains("starting Part[first=500, last=999, size=10000]", "completed 500");
    }

    /** RFC 9110 section 15.5.17. */
    @Test
    void refusesAPartBeyondTheEnd() {
        var answer = ranged("/disk", "bytes=10000-");
        assertThat(answer.statusCode()).isEqualTo(416);
        assertThat(answer.header("Content-Range")).isEqualTo("bytes */10000");
        assertThat(told).isEmpty();
    }

    /** RFC 9110 section 14.2 lets a server ignore the field; then the answer is the whole with 200. */
    @Test
    void answersSeveralRangesWithTheWhole() {
        var answer = ranged("/disk", "bytes=0-1,5-6");
        assertThat(answer.statusCode()).isEqualTo(200);
        assertThat(answer.asByteArray()).isEqualTo(CONTENT);
    }

    /** RFC 9110 section 9.3.2, and section 14.2: no ranges for HEAD. */
    @Test
    void headTellsTheSameAndSendsNothing() {
        var answer = stage.request().header("Range", "bytes=0-9").head("/disk");
        assertThat(answer.statusCode()).isEqualTo(200);
        assertThat(answer.header("Content-Length")).isEqualTo("10000");
        assertThat(answer.header("ETag")).isEqualTo("\"v1\"");
        assertThat(answer.asByteArray()).isEmpty();
        assertThat(told).isEmpty();
    }

    /** RFC 9110 sections 13.1.2 and 13.2.2: If-None-Match is looked at before Range. */
    @Test
    void whoHasItGetsNothing() {
        var answer = stage.request()
                .header("If-None-Match", "\"v1\"")
                .header("Range", "bytes=0-9")
                .get("/disk");
        assertThat(answer.statusCode()).isEqualTo(304);
        assertThat(answer.header("ETag")).isEqualTo("\"v1\"");
        assertThat(told).isEmpty();
    }

    /** RFC 9110 section 13.1.5: another version is sent whole. */
    @Test
    void aPartIsSentOnlyOfTheVersionThatTheAskerHas() {
        var same = stage.request().header("Range", "bytes=0-9").header("If-Range", "\"v1\"");
        assertThat(same.get("/disk").statusCode()).isEqualTo(206);
        var other = stage.request().header("Range", "bytes=0-9").header("If-Range", "\"v0\"");
        assertThat(other.get("/disk").statusCode()).isEqualTo(200);
    }

    /** RFC 6266 section 4, with the extended notation of RFC 8187 section 3.2. */
    @Test
    void isSavedUnderItsName() {
        stage.request()
                .get("/disk")
                .then()
                .header("Content-Disposition", equalTo("attachment; filename=\"groove.mp3\""));
        stage.request()
                .get("/memory")
                .then()
                .header(
                        "Content-Disposition",
                        equalTo("attachment; filename=\"_bung 1.mp3\"; filename*=UTF-8''%C3%9Cbung%201.mp3"));
    }

    @Test
    void aFrontServerIsToldWhereTheFileLies() {
        var answer = stage.request().get("/handed");
        assertThat(answer.header("X-Accel-Redirect"))
                .isEqualTo("/stored/kept/" + kept.hex().substring(0, 2) + "/" + kept.hex());
        assertThat(answer.asByteArray()).isEmpty();
        assertThat(told).containsExactly("starting Whole[size=10000]", "handed over");
    }

    @Test
    void noticesAReaderWhoGoesAway() throws Exception {
        try (var socket = new Socket("127.0.0.1", stage.port())) {
            var request = "GET /large HTTP/1.1\r\nHost: localhost\r\n\r\n";
            socket.getOutputStream().write(request.getBytes(StandardCharsets.US_ASCII));
            socket.getInputStream().readNBytes(100_000);
        }
        var heard = List.of(next(), next());
        assertThat(heard).containsExactly("starting Whole[size=" + LARGE + "]", "broken off");
    }

    private static String next() throws InterruptedException {
        return String.valueOf(told.poll(30, TimeUnit.SECONDS));
    }

    private static Response ranged(String path, String range) {
        return stage.request().header("Range", range).get(path);
    }

    private static void assertPart(Response answer, int first, int last) {
        assertThat(answer.statusCode()).isEqualTo(206);
        assertThat(answer.header("Content-Range")).isEqualTo("bytes " + first + "-" + last + "/10000");
        assertThat(answer.header("Content-Length")).isEqualTo(String.valueOf(last - first + 1));
        assertThat(answer.asByteArray()).isEqualTo(Arrays.copyOfRange(CONTENT, first, last + 1));
    }

    private static byte[] content(int size) {
        var bytes = new byte[size];
        new Random(1).nextBytes(bytes);
        return bytes;
    }

    /** RFC 9112 section 8: an answer in chunks is incomplete where the last chunk, of no length, has not come. */
    @Test
    void whatBreaksOffInChunksIsSeenToBeBroken() throws Exception {
        assertThatThrownBy(() -> get("/chunks").body().readAllBytes()).isInstanceOf(IOException.class);
        try (var socket = new Socket("127.0.0.1", stage.port())) {
            socket.getOutputStream()
                    .write("GET /chunks HTTP/1.1\r\nHost: a\r\n\r\n".getBytes(StandardCharsets.US_ASCII));
            String all = new String(socket.getInputStream().readAllBytes(), StandardCharsets.ISO_8859_1);
            assertThat(all).contains("Transfer-Encoding: chunked").doesNotEndWith("0\r\n\r\n");
        }
    }

    /** And one of a promised length where less has come. */
    @Test
    void aJoinedFileThatLosesAPartIsSeenToBeBroken() throws Exception {
        var answer = get("/joined");
        try (var body = answer.body()) {
            assertThat(body.readNBytes(1000)).hasSize(1000);
            try (var file = new RandomAccessFile(path(shrinks).toFile(), "rw")) {
                file.setLength(100);
            }
            assertThatThrownBy(body::readAllBytes).isInstanceOf(IOException.class);
        }
    }

    /** Nobody has seen anything of it yet: what went wrong is said, and not saved as the file. */
    @Test
    void whatFailsBeforeAnythingHasLeftIsAnErrorAlone() {
        var answer = stage.request().get("/begun");
        assertThat(answer.statusCode()).isEqualTo(500);
        assertThat(answer.header("Content-Disposition")).isNull();
        assertThat(answer.contentType()).startsWith("application/problem+json");
        assertThat(answer.asString()).startsWith("{").contains("urn:groundbass:fault");
    }

    private static Path path(Sha256 file) {
        return folder.resolve("kept").resolve(file.hex().substring(0, 2)).resolve(file.hex());
    }

    private static HttpResponse<InputStream> get(String path) throws IOException, InterruptedException {
        var request = HttpRequest.newBuilder(URI.create("http://127.0.0.1:" + stage.port() + path));
        return HttpClient.newHttpClient().send(request.build(), HttpResponse.BodyHandlers.ofInputStream());
    }
}
